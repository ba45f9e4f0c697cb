import { mFromFt } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import type { CallId } from './memory.ts';

type CallPlace = 'not-yet' | 'here' | 'late' | 'over';
type Place = (m: LessonMemory, lesson: Lesson) => CallPlace;

const LAST_CALL_M = mFromFt(200); // common practice: the last call of a circuit
const FLOWN_FIRST_S = 3; // our choice: nobody calls while rolling out

/** A call just short of its place is at it. */
const ABEAM_M = 150; // our choice: some four seconds of downwind

/**
 * Downwind is called abeam the upwind end of the runway (CAP 493, MATS part 1, quoted; CAP 413 has it "late downwind"
 * past the downwind end), in the FAA's words on entering the leg (AIM 4-1-9).
 */
const downwindPlace: Place = (m, { where, runway, procedures }) => {
  if (m.legs.leg !== 'downwind') return 'not-yet';
  if (where.alongM < 0) return 'late';
  const isThere = procedures?.words === 'faa' || where.alongM < runway.surfaceEndM + ABEAM_M;
  return isThere ? 'here' : 'not-yet';
};

const onLeg = (is: boolean): CallPlace => (is ? 'here' : 'not-yet');

/**
 * Where each call belongs. Final and runway vacated: CAP 413 and FAA AIM 4-1-9; base where nobody answers (AIM); the
 * go-around is flown before it is said (common practice).
 */
const PLACES: Readonly<Record<CallId, Place>> = {
  ready: (m) => onLeg(m.legs.leg === 'line-up'),
  downwind: downwindPlace,
  base: (m, { procedures }) =>
    onLeg(m.legs.leg === 'base' && procedures?.radio === 'untowered' && procedures.words === 'faa'),
  final: (m, { where }) =>
    m.legs.leg !== 'final' ? 'not-yet' : where.heightM < LAST_CALL_M ? 'late' : 'here',
  'going-around': (m, { where }) =>
    onLeg(m.legs.leg === 'go-around' && where.timeS - m.legs.fromS > FLOWN_FIRST_S),
  vacated: (m) => onLeg(m.legs.leg === 'stopped'),
};

export const callPlace = (call: CallId, m: LessonMemory, lesson: Lesson): CallPlace =>
  PLACES[call](m, lesson);

const NEXT: Readonly<Record<string, CallId>> = {
  'line-up': 'ready',
  'take-off-roll': 'downwind',
  upwind: 'downwind',
  'turn-to-crosswind': 'downwind',
  crosswind: 'downwind',
  'turn-to-downwind': 'downwind',
  downwind: 'downwind',
  'go-around': 'going-around',
  'landing-roll': 'vacated',
  stopped: 'vacated',
};

/** The call that belongs to here or comes next. */
export const nextCall = (m: LessonMemory, lesson: Lesson): CallId => {
  const { leg, circuit } = m.legs;
  const p = m.procedures;
  const said = (call: CallId): boolean =>
    p?.calls.some((fact) => fact.call === call && fact.circuit === circuit && fact.saidS !== null) ?? false;
  const named = NEXT[leg];
  if (named !== undefined && !said(named)) return named;
  const askedOnBase = lesson.procedures?.radio === 'untowered' && lesson.procedures.words === 'faa';
  const onBase = leg === 'base' || leg === 'turn-to-base' || leg === 'downwind';
  return onBase && askedOnBase && !said('base') ? 'base' : 'final';
};
