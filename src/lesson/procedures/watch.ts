import type { PilotEvent } from '../../simulation/pilot-event.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import type { ProcedureMemory } from './memory.ts';
import { CALL_IDS, type CallId } from './memory.ts';
import { makeCall, readBack, watchCalls } from './watch-calls.ts';
import { sayItem, tickItem, watchChecks } from './watch-checks.ts';
import { takeTraffic, watchTraffic } from './watch-traffic.ts';

/** Checks, calls, lookout and traffic as a part of the lesson's fold; null where the scenario has none. */
export const beginProcedures = ({ procedures }: Lesson): ProcedureMemory | null =>
  procedures === null
    ? null
    : {
        lists: [],
        calls: [],
        answers: [],
        coming: [],
        instructed: 0,
        looks: [],
        subscaleHpa: procedures.subscaleHpa,
        clearedToTakeOff: false,
        clearedToLand: false,
        uncleared: [],
        others: [],
        nearest: [],
        coach: '',
        said: [],
      };

/** At every look of the lesson, after the legs. */
export const watchProcedures = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const p = m.procedures;
  if (p === null || p === undefined) return;
  watchTraffic(p, m, lesson, s);
  watchChecks(p, m, lesson, s);
  watchCalls(p, m, lesson, s);
};

type Take = (
  p: ProcedureMemory,
  value: string,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
) => void;

/** "downwind/0": which call in which wording; "back/0": what the tower said, read back; "if-it-stops/0": the plan. */
const takeSaying: Take = (p, value, m, lesson, s) => {
  const [what = '', number = ''] = value.split('/');
  const choice = Number(number);
  if (!(choice >= 0 && choice <= 2)) return;
  if (what === 'back') readBack(p, s, choice);
  else if (what === 'if-it-stops') sayItem(p, lesson, s, choice);
  else if ((CALL_IDS as readonly string[]).includes(what)) makeCall(p, m, lesson, s, what as CallId, choice);
};

const takeSaid: Take = (p, value, _m, _lesson, s) => {
  p.said.push(Object.freeze({ atS: s.timeS, text: value }));
};

const TAKE: Readonly<Record<PilotEvent['kind'], Take>> = {
  tick: (p, value, _, lesson, s) => {
    tickItem(p, lesson, s, value);
  },
  say: takeSaying,
  look: (p, value, _m, _lesson, s) => {
    const deg = Number(value);
    if (Number.isFinite(deg)) p.looks.push(Object.freeze({ atS: s.timeS, deg }));
  },
  subscale: (p, value) => {
    const hpa = Number(value);
    if (hpa >= 850 && hpa <= 1090) p.subscaleHpa = hpa;
  },
  coach: (p, value) => {
    p.coach = value;
  },
  said: takeSaid,
  warned: takeSaid,
  // Whose flight it was is asked of the recording (`session/flown-by.ts`)
  flies: () => undefined,
  traffic: (p, value, _m, _lesson, s) => takeTraffic(p, s.timeS, value),
};

/** What the pilot did beside the controls in this step. */
export const takeEvents = (
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  events: readonly PilotEvent[],
): void => {
  const p = m.procedures;
  if (p === null || p === undefined) return;
  for (const { kind, value } of events) TAKE[kind](p, value, m, lesson, s);
};
