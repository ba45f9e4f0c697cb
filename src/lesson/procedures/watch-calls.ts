import type { Snapshot } from '../../simulation/snapshot.ts';
import { mFromFt } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import { askGoAroundOnce } from '../watch/dues.ts';
import { callPlace } from './call-places.ts';
import {
  type AnswerFact,
  type AnswerId,
  CALL_IDS,
  type CallFact,
  type CallId,
  isReadBack,
  type ProcedureMemory,
} from './memory.ts';
import { isRunwayTaken, isYetToPass } from './watch-traffic.ts';

/** A call whose place was there for less was not due. */
const TIME_FOR_S = 5; // common practice: some fifteen letters a second, and a breath
/** From the call to the answer. */
const ANSWER_S = 2.5; // our choice: what a tower takes
/** Without a clearance by here one goes around (common practice). */
const LAST_CLEARANCE_M = mFromFt(200);

/** The call of this circuit that is or was due; null before it was. */
const callOf = (p: ProcedureMemory, call: CallId, circuit: number): CallFact | null =>
  p.calls.find((fact) => fact.call === call && fact.circuit === circuit) ?? null;

/** Opens the calls where they belong and lets the tower speak. */
export const watchCalls = (
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
): void => {
  if (s.radioFailed) lightSignals(p, m, lesson, s);
  else watchPlaces(p, m, lesson, s);
  if (lesson.procedures?.radio !== 'towered') return;
  if (!s.radioFailed) speak(p, m, lesson, s);
  watchClearances(p, m, lesson, s);
};

const watchPlaces = (p: ProcedureMemory, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { circuit } = m.legs;
  for (const call of CALL_IDS) {
    const place = callPlace(call, m, lesson);
    const fact = callOf(p, call, circuit);
    if (fact === null) {
      // Joined past its place, it was never due
      if (place === 'here') p.calls.push(newCall(call, circuit, s.timeS));
      continue;
    }
    if (place === 'here' && fact.dueS === null) fact.dueS = s.timeS;
    if (place !== 'here' && fact.saidS === null && fact.dueS !== null && s.timeS - fact.dueS < TIME_FOR_S) {
      // Its place went by before anybody could have said it
      fact.dueS = null;
      continue;
    }
    if (place === 'late' && fact.saidS === null && fact.dueS !== null) fact.lateS ??= s.timeS;
    if (place === 'not-yet' && fact.dueS !== null) fact.closedS ??= s.timeS;
  }
};

const newCall = (call: CallId, circuit: number, dueS: number | null): CallFact => ({
  call,
  circuit,
  dueS,
  lateS: null,
  closedS: null,
  saidS: null,
  choice: null,
});

/** The pilot has made a call, in the right wording (0) or another. */
export const makeCall = (
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  call: CallId,
  choice: number,
): void => {
  const { circuit } = m.legs;
  let fact = callOf(p, call, circuit);
  if (fact === null) {
    fact = newCall(call, circuit, callPlace(call, m, lesson) === 'late' ? s.timeS : null);
    p.calls.push(fact);
  }
  if (fact.saidS !== null) return;
  fact.saidS = s.timeS;
  fact.choice = choice;
  if (lesson.procedures?.radio !== 'towered' || s.radioFailed) return;
  const answer = answerTo(call, p, m, lesson, s);
  if (answer !== null) p.coming.push({ answer, atS: s.timeS + ANSWER_S });
};

const answerTo = (
  call: CallId,
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
): AnswerId | null => {
  if (call === 'ready') return 'cleared-take-off';
  if (call === 'final') return isRunwayTaken(p, lesson, s.timeS) ? 'continue' : 'cleared-land';
  if (call !== 'downwind') return null;
  const asked = lesson.task.instructions.some((i) => i.circuit === m.legs.circuit && i.what !== 'go-around');
  if (asked) return null;
  return isYetToPass(p, lesson, s) ? 'follow' : 'report-final';
};

/** What is due to be said is said: answers, the instructions of the task, and what the runway asks for. */
const speak = (p: ProcedureMemory, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  for (const coming of p.coming.filter(({ atS }) => atS <= s.timeS)) hear(p, m, s, coming.answer);
  p.coming = p.coming.filter(({ atS }) => atS > s.timeS);
  while (p.instructed < m.said.length) {
    const what = m.said[p.instructed]?.what;
    p.instructed += 1;
    if (what !== undefined && what !== 'stop') hear(p, m, s, what);
  }
  const onFinal = m.legs.leg === 'final' || m.legs.leg === 'hold-off';
  if (!onFinal || p.clearedToLand || !has(p, m, 'continue')) return;
  if (!isRunwayTaken(p, lesson, s.timeS)) hear(p, m, s, 'cleared-land');
  else if (lesson.where.heightM < LAST_CLEARANCE_M && !has(p, m, 'go-around')) hear(p, m, s, 'go-around');
};

const has = (p: ProcedureMemory, m: LessonMemory, answer: AnswerId): boolean =>
  p.answers.some((fact) => fact.answer === answer && fact.circuit === m.legs.circuit);

const hear = (p: ProcedureMemory, m: LessonMemory, s: Readonly<Snapshot>, answer: AnswerId): void => {
  p.answers.push({ answer, circuit: m.legs.circuit, heardS: s.timeS, readS: null, choice: null });
  if (answer === 'cleared-take-off') p.clearedToTakeOff = true;
  if (answer === 'cleared-land' || answer === 'green-light') p.clearedToLand = true;
  if (answer === 'go-around') p.clearedToLand = false;
};

/** The answer that still has to be read back; null: none. */
export const openAnswer = (p: ProcedureMemory): AnswerFact | null =>
  p.answers.find((fact) => fact.readS === null && isReadBack(fact.answer)) ?? null;

/** The pilot has read an answer back, rightly (0) or otherwise. */
export const readBack = (p: ProcedureMemory, s: Readonly<Snapshot>, choice: number): void => {
  const fact = openAnswer(p);
  if (fact === null) return;
  fact.readS = s.timeS;
  fact.choice = choice;
};

/**
 * With the radio gone a tower speaks by light: green flashes to one on downwind, on final steady green, or steady red
 * where the runway is taken (FAA AIM 4-3-13, table 4-3-1; ICAO Annex 2, appendix 1).
 */
const lightSignals = (p: ProcedureMemory, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  for (const fact of p.calls) if (fact.saidS === null) fact.closedS ??= s.timeS;
  p.coming = [];
  if (lesson.procedures?.radio !== 'towered') return;
  const { leg } = m.legs;
  if (leg === 'downwind' && !has(p, m, 'green-flashes')) hear(p, m, s, 'green-flashes');
  if (leg !== 'final' || p.clearedToLand) return;
  if (!isRunwayTaken(p, lesson, s.timeS)) hear(p, m, s, 'green-light');
  else if (!has(p, m, 'red-light')) hear(p, m, s, 'red-light');
};

/** A tower's runway is used only when cleared; on final without it one goes around. */
const watchClearances = (
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
): void => {
  const { leg, circuit } = m.legs;
  const note = (what: string): void => {
    if (p.uncleared.some((u) => u.circuit === circuit && u.what === what)) return;
    p.uncleared.push({ circuit, atS: s.timeS, what });
  };
  const begun = leg === 'take-off-roll' && circuit === 1 && m.touchdowns.length === 0;
  if (begun && !p.clearedToTakeOff) note('take-off');
  if (leg === 'landing-roll' && !p.clearedToLand) note('landing');
  if (leg === 'go-around' || leg === 'turn-to-crosswind') p.clearedToLand = false;
  const low = leg === 'final' && lesson.where.heightM < LAST_CLEARANCE_M;
  if (!low || p.clearedToLand) return;
  askGoAroundOnce(m, { dueS: s.timeS, heightM: lesson.where.heightM, why: 'no clearance to land' });
};
