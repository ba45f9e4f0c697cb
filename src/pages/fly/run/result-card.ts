import { lessonMemory, ownAircraft } from '../../../flight/flight.ts';
import { flownTitle } from '../../../flight/outcome-words.ts';
import { LEFT, marksNow, PRACTISED, practised, resultOfFlight } from '../../../flight/result.ts';
import { firstLookAt, trainsFirst } from '../../../flight/result-words.ts';
import { shownWords } from '../../../flight/shown-words.ts';
import type { FlownResult, Result } from '../../../formats/result.ts';
import { judgedExerciseOf } from '../../../judged-exercises.ts';
import type { HelpUsed } from '../../../lesson/attempts/attempt.ts';
import { helpWords } from '../../../lesson/attempts/help-words.ts';
import type { Exercise } from '../../../lesson/exercises/exercise.ts';
import { wordsFor } from '../../../lesson/judge/judge.ts';
import type { LegMarks } from '../../../lesson/judge/leg-marks.ts';
import { type Verdict, verdictOf } from '../../../lesson/judge/verdict.ts';
import { leftOut } from '../../../lesson/procedures/left-out.ts';
import { flownBy } from '../../../session/flown-by.ts';
import { clockText } from '../../../units/format.ts';
import { flownPath } from './flown-path.ts';
import type { ReadyFlight } from './ready.ts';
import type { ResultCard } from './shown-result.ts';

/** Whether what its exercise is for has been flown, where that is not a whole flight. */
export const isPractised = (flight: ReadyFlight): boolean =>
  practised(flight, judgedExerciseOf(flight.scenario));

/** The legs of this circuit that are over, as they will stand in the result. */
export const marksOfLegs = (flight: ReadyFlight, watchedS: number): readonly LegMarks[] =>
  marksNow(flight, judgedExerciseOf(flight.scenario), watchedS);

/** What came of the flight, as it is kept and as it is shown. */
export const resultHere = (flight: ReadyFlight, watchedS: number): FlownResult => {
  const unended = isPractised(flight) ? PRACTISED : LEFT;
  const result: Result = resultOfFlight(flight, judgedExerciseOf(flight.scenario), watchedS, unended);
  const { scenario: _, model_version: __, ...flown } = result;
  return flown;
};

/** An exercise is passed by who flew it from its beginning. */
const verdictFrom = (exercise: Pick<Exercise, 'success'>, result: FlownResult, fromS: number): Verdict => {
  const verdict = verdictOf(exercise, result.outcome, result.why, result);
  if (fromS === 0) return verdict;
  const whole = `The model pilot flew until ${clockText(fromS)}: flown by you from the beginning it can be passed.`;
  return { passed: false, against: [...verdict.against, whole] };
};

/** The flight as a card. */
export const cardOf = (flight: ReadyFlight, help: HelpUsed): ResultCard => {
  const result = resultHere(flight, help.watchedS);
  const exercise = judgedExerciseOf(flight.scenario);
  const { last, theirsFromS } = flownBy(ownAircraft(flight).recorder.recording);
  const isShown = last === 'model';
  const fromS = theirsFromS ?? 0;
  return {
    result,
    shown: isShown ? shownWords(flight) : null,
    theirsFromS: fromS,
    firstLook: isShown ? '' : firstLookAt(result),
    trains: isShown ? null : trainsFirst(result),
    verdict: exercise && !isShown ? verdictFrom(exercise, result, fromS) : null,
    exercise: exercise ? flownTitle(exercise.title, exercise.id, flight.scenario.start.leg) : '',
    advice: isShown ? [] : [...new Set(result.items.map(wordsFor).filter((words) => words !== ''))],
    leftOut: isShown ? [] : leftOut(lessonMemory(flight), flight.lesson, result.items),
    judgedBy: flight.limits.title,
    drawn: flownPath(flight.plan, flight.model.runway, flight.trail),
    help: helpWords(help),
  };
};
