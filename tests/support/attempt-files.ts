import { gzipSync } from 'node:zlib';
import { exerciseOf } from '../../src/catalogue.ts';
import type { AttemptBody, AttemptHead } from '../../src/formats/attempt.ts';
import { attemptText, bodyText, LOGBOOK_TEXT, packedAttemptText } from '../../src/formats/logbook-json.ts';
import { resultOf } from '../../src/formats/result.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPlayback } from '../../src/session/playback.ts';
import { createSession, tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import { STEP_HZ } from '../../src/simulation/scenario.ts';
import type { StudyFlight } from '../../src/study/flown.ts';

/** What would be kept of a recorded flight. */
export const keptBody = ({ recording, plan }: StudyFlight): AttemptBody => {
  const { scenario } = recording;
  const { runway } = prepare(scenario);
  const lesson = lessonOfScenario(scenario, runway, plan, exerciseOf(scenario));
  const session = createSession([
    {
      scenario,
      source: createPlayback(recording) as ControlSource<unknown>,
      folds: [createLessonFold(lesson) as Fold<unknown>],
    },
  ]);
  const aircraft = session.aircraft[0]!;
  while (session.step < recording.steps) tick(session);
  const memory = aircraft.foldMemories[0] as LessonMemory;
  const {
    scenario: _,
    model_version: __,
    ...result
  } = resultOf(scenario, lesson, memory, session.step / STEP_HZ, {
    outcome: 'time-up',
    why: 'The time was up.',
  });
  return {
    recording: aircraft.recorder.recording,
    marks: [{ atS: 20, kind: 'call', text: 'final' }],
    result,
    judgedBy: null,
  };
};

/** The logbook's file with one attempt spread out. */
export const oneAttemptFile = (head: AttemptHead, body: AttemptBody): string =>
  `${LOGBOOK_TEXT.before}${attemptText(head, body)}${LOGBOOK_TEXT.after}`;

/** The logbook's file with many attempts that share one flight. */
export const manyAttemptsFile = (heads: readonly AttemptHead[], body: AttemptBody): string => {
  const packed = gzipSync(bodyText(body));
  const all = heads.map((head) => packedAttemptText(head, packed));
  return `${LOGBOOK_TEXT.before}${all.join(LOGBOOK_TEXT.between)}${LOGBOOK_TEXT.after}`;
};
