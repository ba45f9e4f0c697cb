import type { CheckName } from '../circuit/checks.ts';
import { secondsToTurn, turnAhead } from '../lesson/coach/turns-ahead.ts';
import { callPlace } from '../lesson/procedures/call-places.ts';
import { itemsOf } from '../lesson/procedures/check-lists.ts';
import {
  CALL_IDS,
  type CallId,
  type ListFact,
  type ListId,
  type ProcedureMemory,
} from '../lesson/procedures/memory.ts';
import { openAnswer } from '../lesson/procedures/watch-calls.ts';
import { currentList, isComplete, openList } from '../lesson/procedures/watch-checks.ts';
import { tell } from '../session/session.ts';
import type { PilotEvent } from '../simulation/pilot-event.ts';
import { mFromFt, radFromDeg } from '../units/conversions.ts';
import { checkTimes, PACE_S } from './check-times.ts';
import { DEMONSTRATION, type DemonstrationMemory } from './demonstration-pilot.ts';
import { type Flight, lessonMemory, ownAircraft } from './flight.ts';

/**
 * What the model pilot does beside the controls, at its place, as a student's own pilot events: ticks, calls and
 * read-backs in the right wording, the subscale, the lookout before a turn. It carries nothing over: what was done
 * last stands in the lesson's memory, so that a flight set back does the same again.
 */
const LOOK_STEPS = 12; // our choice: five times a second, and always on a look of the lesson, whose place it reads

/** Two ticks of one look at the clock lie this much apart at least: a step under the pace itself. */
const ITEM_S = PACE_S - 0.05; // derived: of the pace and of the looks at it
/** Going around, hands and words are quicker. */
const QUICK_S = 0.7; // our choice: power, heat, attitude in one breath
/** What was heard is heard out. */
const ANSWER_S = 3.5; // common practice: some fifteen letters a second
/** A call is not spoken over the one before. */
const SPOKEN_S = 4; // common practice: some fifteen letters a second

/** The lookout before a turn is begun so long before it, a second for each way, and again where the turn does not come. */
const LOOK_FROM_S = 12; // our choice: done well before the wing goes down
const LOOK_EACH_S = 0.9; // our choice: an eye that stops on something
const LOOK_AGAIN_S = 16; // our choice: fresh enough for the turn
const BROKEN_OFF_S = 3; // our choice: begun anew after that
const BANKED_RAD = radFromDeg(7); // our choice: more than rough air rocks
const CLIMBING_MPS = 0.5; // our choice: a climb that the needle shows
const AWAY_DEG = -90; // our choice: along the wing
const INTO_DEG = 90; // our choice: along the wing, where from downwind long final lies ahead of it

type Due = readonly [PilotEvent['kind'], string];

/** The source's memory is its own where the demonstration flies; null where somebody else does. */
const demonstrationOf = (flight: Flight): DemonstrationMemory | null => {
  const { source, sourceMemory } = ownAircraft(flight);
  return source.name === DEMONSTRATION ? (sourceMemory as DemonstrationMemory) : null;
};

const isSaid = (p: ProcedureMemory, call: CallId, circuit: number): boolean =>
  p.calls.some((fact) => fact.call === call && fact.circuit === circuit && fact.saidS !== null);

/** When something was last said. */
const lastSaidS = (p: ProcedureMemory): number =>
  Math.max(
    Number.NEGATIVE_INFINITY,
    ...p.calls.map(({ saidS }) => saidS ?? Number.NEGATIVE_INFINITY),
    ...p.answers.map(({ readS }) => readS ?? Number.NEGATIVE_INFINITY),
  );

const callDue = (flight: Flight, p: ProcedureMemory): Due[] => {
  const m = lessonMemory(flight);
  const { timeS, radioFailed } = ownAircraft(flight).snapshot;
  if (radioFailed || timeS - lastSaidS(p) < SPOKEN_S) return [];
  const answer = openAnswer(p);
  if (answer !== null) return timeS - answer.heardS < ANSWER_S ? [] : [['say', 'back/0']];
  const due = CALL_IDS.find((call) => {
    const place = callPlace(call, m, flight.lesson);
    return (place === 'here' || place === 'late') && !isSaid(p, call, m.legs.circuit);
  });
  if (due === undefined) return [];
  const before = openList(p, 'before-take-off');
  // Opened at the lesson's first look: before it nothing is ready
  if (due === 'ready' && (before === null || !isComplete(before))) return [];
  return [['say', `${due}/0`]];
};

/** What is moved for the check on downwind; the words wait for it. */
const MOVED: ReadonlySet<CheckName> = new Set(['gearDown', 'propellerFine', 'pumpOn']);

/** Whether a worked item still has its turn to come, by the times that the hands keep. */
const isStillWorked = (flight: Flight, d: DemonstrationMemory, list: ListId, id: string): boolean => {
  if (list !== 'before-take-off' && list !== 'downwind') return false;
  const { timeS } = ownAircraft(flight).snapshot;
  if (d.checkFromS === null) return list === 'downwind';
  const time = checkTimes(list, flight.scenario.aeroplane).find((each) => each.id === id);
  return time !== undefined && timeS - d.checkFromS <= time.toS;
};

const itemDue = (flight: Flight, d: DemonstrationMemory, p: ProcedureMemory, fact: ListFact): Due[] => {
  const { lesson } = flight;
  const { snapshot: s } = ownAircraft(flight);
  if (s.timeS - fact.lastActS < (fact.list === 'go-around' ? QUICK_S : ITEM_S)) return [];
  const rows = itemsOf(fact.list, lesson.aeroplane);
  for (const [i, item] of fact.items.entries()) {
    const row = rows[i];
    if (item.doneS !== null || row === undefined) continue;
    if (row.how === 'worked') {
      if (isStillWorked(flight, d, fact.list, item.id)) return [];
      continue;
    }
    if (row.how === 'asked') return [['say', `${item.id}/0`]];
    if (row.stands === undefined || row.stands(lesson, s, p)) return [['tick', item.id]];
    if (MOVED.has(row.name) && isStillWorked(flight, d, fact.list, item.id)) return [];
    if (row.name === 'subscale') return [['subscale', String(Math.round(lesson.procedures?.qnhHpa ?? 0))]];
    // Before take-off and after landing the hands are on their way; in the air it comes when it is flown
    if (s.onGround && !s.engineDead) return [];
  }
  return [];
};

const checkDue = (flight: Flight, d: DemonstrationMemory, p: ProcedureMemory): Due[] => {
  const fact = currentList(p);
  if (fact === null || isComplete(fact)) return [];
  // On downwind the hands are free once it is settled, and the words go with them
  if (fact.list === 'downwind' && d.checkFromS === null) return [];
  return itemDue(flight, d, p, fact);
};

/** Seconds until the next turn, by place, or by height where the climb decides; endless where none is ahead. */
const secondsLeft = (flight: Flight): number => {
  const { lesson, limits } = flight;
  const { circuit } = flight.scenario.aerodrome;
  const { snapshot: s } = ownAircraft(flight);
  const m = lessonMemory(flight);
  const onto = turnAhead(m.legs.leg);
  if (onto === null) return Number.POSITIVE_INFINITY;
  const byPlaceS = secondsToTurn({ m, lesson, s, limits, teaching: circuit.teaching });
  const leftS = byPlaceS ?? Number.POSITIVE_INFINITY;
  if (onto !== 'crosswind' || s.verticalSpeedMps < CLIMBING_MPS) return leftS;
  return Math.min(leftS, (mFromFt(circuit.crosswindTurnFt) - s.heightM) / s.verticalSpeedMps);
};

const lookDue = (flight: Flight, p: ProcedureMemory): Due[] => {
  const { lesson } = flight;
  const { snapshot: s } = ownAircraft(flight);
  const { side } = lesson.plan;
  const last = p.looks.at(-1);
  const sinceS = last === undefined ? Number.POSITIVE_INFINITY : s.timeS - last.atS;
  const look = (deg: number): Due[] => [['look', String(deg * side)]];
  // + into the turn, as the circuit is flown
  const at = last === undefined ? INTO_DEG : last.deg * side;
  if (at !== INTO_DEG && sinceS < BROKEN_OFF_S) {
    if (sinceS < LOOK_EACH_S) return [];
    return look(at === AWAY_DEG ? 0 : INTO_DEG);
  }
  // In the turn it is too late to begin
  if (Math.abs(s.bankRad) > BANKED_RAD || secondsLeft(flight) > LOOK_FROM_S) return [];
  return at === INTO_DEG && sinceS < LOOK_AGAIN_S ? [] : look(AWAY_DEG);
};

/** Before a step: what the model pilot says, ticks and looks at now; nothing where somebody else flies. */
export const demonstrate = (flight: Flight): void => {
  const { session } = flight;
  if (session.step % LOOK_STEPS !== 0) return;
  const d = demonstrationOf(flight);
  const m = lessonMemory(flight);
  const p = m.procedures;
  if (d === null || p === null || m.ended !== null) return;
  const { snapshot: s } = ownAircraft(flight);
  // Without an engine there is a field, and nothing else
  if (s.engineDead && !s.onGround) return;
  const due = [...lookDue(flight, p), ...callDue(flight, p), ...checkDue(flight, d, p)];
  for (const [kind, value] of due) tell(session, 0, kind, value);
};

/** After the stop the call and the check are the model pilot's too, and the flight waits for them. */
export const isStillDemonstrating = (flight: Flight): boolean => {
  const p = lessonMemory(flight).procedures;
  if (demonstrationOf(flight) === null || p === null) return false;
  const check = openList(p, 'after-landing');
  const { timeS } = ownAircraft(flight).snapshot;
  if (check === null || timeS - check.openS > MOST_AFTER_S) return false;
  return !isComplete(check) || !isSaid(p, 'vacated', lessonMemory(flight).legs.circuit);
};

/** Where an item cannot be done the flight ends all the same. */
const MOST_AFTER_S = 25; // our choice: as long as a student has
