import { mFromFt, mpsFromFpm, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { callPlace } from '../procedures/call-places.ts';
import { doingWords, NO_PRESSURE } from '../procedures/check-items.ts';
import { checkItemWords, itemsOf, titleOf } from '../procedures/check-lists.ts';
import { lookoutBefore } from '../procedures/lookout.ts';
import { CALL_IDS, type ListId } from '../procedures/memory.ts';
import { openAnswer } from '../procedures/watch-calls.ts';
import { currentList, isComplete } from '../procedures/watch-checks.ts';
import { isYetToPass } from '../procedures/watch-traffic.ts';
import type { CoachContext, Word } from './context.ts';
import { stallMargin } from './safety.ts';
import { secondsToTurn, turnAhead } from './turns-ahead.ts';

const LOOK_FROM_S = 14; // our choice: late enough not to be in the way
const READ_BACK_AFTER_S = 5; // our choice: late enough not to be in the way
/** Without an item for so long, the next is named; somebody who is talked through is not left waiting (our choice: seconds). */
const CHECK_IDLE_S = { reminded: 9, 'talked-through': 3 } as const;
/** Then the next item is due, and this one is left open. */
const NAMED_TWICE = 2; // our choice: a third time is nagging

/** Flying first: in a turn, or with little speed in hand, nobody is asked for a check, a call or a lookout. */
const BUSY_BANK_RAD = radFromDeg(15); // our choice: more than a correction
const LITTLE_SPEED = 1.25; // common practice: a little under the 1.3 of an approach
const isBusy = ({ s }: CoachContext): boolean =>
  !s.onGround && (Math.abs(s.bankRad) > BUSY_BANK_RAD || stallMargin(s) < LITTLE_SPEED);

/** Levers that come in only with a climb and the speed for it. */
const WANTS_CLIMB: ReadonlySet<string> = new Set(['flap', 'flap-up', 'gear']);
const CLIMB_MPS = mpsFromFpm(200); // our choice: a climb that the needle shows

/** The check on final is over, or left, by the gate: lower down there is the approach and nothing else. */
const FINAL_CHECK_M = mFromFt(300); // common practice: the gate of a circuit
/** A call takes so long, and its place must still be there when it has been said. */
const SPOKEN_S = 5; // common practice: some fifteen letters a second
const LAST_CALL_M = mFromFt(200); // common practice: the last call of a circuit

/** Whether an item can be asked for where the flight is now. */
const isItsMoment = ({ m, lesson, s }: CoachContext, list: ListId, id: string): boolean => {
  if (list === 'final') return lesson.where.heightM > FINAL_CHECK_M;
  if (list !== 'go-around' && list !== 'after-take-off') return true;
  const climbs =
    s.verticalSpeedMps > CLIMB_MPS && s.iasMps > 0.95 * mpsFromKt(lesson.aeroplane.speeds.goAroundKt);
  return !WANTS_CLIMB.has(id) || (climbs && m.legs.leg !== 'final');
};

/** How often each topic has been said. */
export type Told = (topic: string) => number;

const checkReminder = (c: CoachContext, idleS: number, told: Told): Word[] => {
  const { m, lesson, s } = c;
  const p = m.procedures;
  const fact = p === null ? null : currentList(p);
  if (fact === null || s.timeS - fact.lastActS < idleS) return [];
  const rows = itemsOf(fact.list, lesson.aeroplane);
  const topicOf = (id: string): string => `check-${fact.list}-${fact.circuit}-${id}`;
  const at = fact.items.findIndex(({ id, doneS }) => doneS === null && told(topicOf(id)) < NAMED_TWICE);
  if (!isItsMoment(c, fact.list, fact.items[at]?.id ?? '')) return [];
  const row = rows[at];
  const item = fact.items[at];
  if (row === undefined || item === undefined) return [];
  const words = checkItemWords(row, lesson);
  const how = doingWords(row.name);
  const asked = `${titleOf(fact.list)} check: ${words}${how === '' ? '' : `. ${how.charAt(0).toUpperCase()}${how.slice(1)}`}.`;
  const text = item.wrong > 0 ? `Look again: ${words}.` : asked;
  return [{ topic: topicOf(item.id), text, rank: 55, afterS: 0 }];
};

const callReminder = ({ m, lesson, s }: CoachContext, told: Told): Word[] => {
  const p = m.procedures;
  if (p === null) return [];
  const answer = openAnswer(p);
  if (answer !== null && s.timeS - answer.heardS > READ_BACK_AFTER_S)
    return [{ topic: 'read-back', text: 'The tower waits for its answer.', rank: 50, afterS: 0 }];
  const due = CALL_IDS.find((call) => {
    // Past its place a call is left: what is late is not called for
    if (callPlace(call, m, lesson) !== 'here') return false;
    return !p.calls.some(
      (fact) => fact.call === call && fact.circuit === m.legs.circuit && fact.saidS !== null,
    );
  });
  const check = currentList(p);
  const checkFirst = due === 'ready' && check !== null && !isComplete(check);
  if (due === undefined || checkFirst || s.radioFailed) return [];
  // Flown before it is said
  if (due === 'going-around' && s.verticalSpeedMps < CLIMB_MPS) return [];
  if (due === 'final' && lesson.where.heightM + SPOKEN_S * s.verticalSpeedMps < LAST_CALL_M) return [];
  const topic = `call-${due}-${m.legs.circuit}`;
  if (told(topic) >= NAMED_TWICE) return [];
  return [{ topic, text: `Call ${due.replaceAll('-', ' ')}.`, rank: 52, afterS: 7 }];
};

const lookReminder = (c: CoachContext): Word[] => {
  const { m, lesson, s } = c;
  const p = m.procedures;
  const onto = turnAhead(m.legs.leg);
  const leftS = secondsToTurn(c);
  if (p === null || onto === null || leftS === null || leftS > LOOK_FROM_S || leftS < -5) return [];
  const { side } = lesson.plan;
  const done = lookoutBefore(p.looks, { onto, fromS: s.timeS }, side);
  if (done.away && done.ahead && done.into) return [];
  const [away, into] = side === 1 ? ['left', 'right'] : ['right', 'left'];
  const along =
    onto === 'base'
      ? ', along long final'
      : onto === 'final'
        ? ', along the approach, the opposite base'
        : '';
  const text = `Look out: ${away}, ahead, ${into}${along}.`;
  return [{ topic: `look-${onto}`, text, rank: 48, afterS: 0 }];
};

/** The one ahead has yet to go by on final where base would be turned. */
const spacingReminder = (c: CoachContext): Word[] => {
  const { m, lesson, s } = c;
  const leftS = secondsToTurn(c);
  if (m.procedures === null || m.legs.leg !== 'downwind' || leftS === null || leftS > LOOK_FROM_S) return [];
  if (!isYetToPass(m.procedures, lesson, s)) return [];
  const text = 'Number two: extend downwind until the one ahead has gone by on final.';
  return [{ topic: 'spacing', text, rank: 19, afterS: 1 }];
};

/** What a check has found and what it means for the landing; said once. */
const foundReminder = ({ m, s }: CoachContext, told: Told): Word[] => {
  const found = m.procedures?.lists.some(({ items }) => items.some(({ note }) => note === NO_PRESSURE));
  if (found !== true || s.onGround || told('no-brakes') > 0) return [];
  const text = 'No pressure in the brakes: touch down slow and near the point, and let it roll out.';
  return [{ topic: 'no-brakes', text, rank: 46, afterS: 0.5 }];
};

/** Checks, calls, lookout and spacing that are due and not done. */
export const remindersNow = (
  c: CoachContext,
  level: 'reminded' | 'talked-through',
  told: Told = () => 0,
): Word[] => [
  ...spacingReminder(c),
  ...foundReminder(c, told),
  ...(isBusy(c)
    ? []
    : [...lookReminder(c), ...callReminder(c, told), ...checkReminder(c, CHECK_IDLE_S[level], told)]),
];
