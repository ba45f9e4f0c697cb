import type { CircuitLeg } from '../../circuit/types.ts';
import type { TurnOnto } from '../names.ts';
import { CALL_IDS, callPlace } from '../procedures/call-places.ts';
import { CHECK_LISTS, itemsOf } from '../procedures/check-lists.ts';
import { lookoutBefore } from '../procedures/lookout.ts';
import { openAnswer } from '../procedures/watch-calls.ts';
import { currentList, isComplete } from '../procedures/watch-checks.ts';
import type { CoachContext, Word } from './context.ts';

const ONTO: Partial<Record<string, { readonly leg: CircuitLeg; readonly onto: TurnOnto }>> = {
  upwind: { leg: 'upwind', onto: 'crosswind' },
  'go-around': { leg: 'upwind', onto: 'crosswind' },
  crosswind: { leg: 'crosswind', onto: 'downwind' },
  downwind: { leg: 'downwind', onto: 'base' },
  base: { leg: 'base', onto: 'final' },
};

/** Seconds until the planned place of the next turn; null where none is ahead. */
export const secondsToTurn = ({ m, lesson, s }: CoachContext): number | null => {
  const next = ONTO[m.legs.leg];
  if (next === undefined) return null;
  const { eastM, northM } = lesson.plan.turns[next.onto].from;
  const { sinTrack, cosTrack } = lesson.lines[next.leg];
  const leftM = (eastM - s.eastM) * sinTrack + (northM - s.northM) * cosTrack;
  const closing = s.velocityEastMps * sinTrack + s.velocityNorthMps * cosTrack;
  return closing < 5 ? null : leftM / closing;
};

export const turnAhead = (leg: string): TurnOnto | null => ONTO[leg]?.onto ?? null;

const LOOK_FROM_S = 14;
const CHECK_IDLE_S = 9;
const READ_BACK_AFTER_S = 5;

const checkReminder = ({ m, lesson, s }: CoachContext): Word[] => {
  const p = m.procedures;
  const fact = p === null ? null : currentList(p);
  if (fact === null) return [];
  const at = fact.items.findIndex(({ doneS }) => doneS === null);
  const item = itemsOf(fact.list, lesson.aeroplane)[at];
  const idleS = s.timeS - fact.lastActS;
  if (item === undefined || idleS < CHECK_IDLE_S) return [];
  const { title } = CHECK_LISTS[fact.list];
  const wrong = fact.items[at]?.wrong ?? 0;
  const text = wrong > 0 ? `Look again: ${item.words(lesson)}.` : `${title} check: ${item.words(lesson)}.`;
  return [{ topic: `check-${fact.list}-${item.id}`, text, rank: 55, afterS: 0 }];
};

const callReminder = ({ m, lesson, s }: CoachContext): Word[] => {
  const p = m.procedures;
  if (p === null) return [];
  const answer = openAnswer(p);
  if (answer !== null && s.timeS - answer.heardS > READ_BACK_AFTER_S)
    return [{ topic: 'read-back', text: 'The tower waits for its answer.', rank: 50, afterS: 0 }];
  const due = CALL_IDS.find((call) => {
    const place = callPlace(call, m, lesson);
    if (place !== 'here' && place !== 'late') return false;
    return !p.calls.some(
      (fact) => fact.call === call && fact.circuit === m.legs.circuit && fact.saidS !== null,
    );
  });
  const check = currentList(p);
  const checkFirst = due === 'ready' && check !== null && !isComplete(check);
  if (due === undefined || checkFirst || s.radioFailed) return [];
  return [{ topic: `call-${due}`, text: `Call ${due.replaceAll('-', ' ')}.`, rank: 52, afterS: 7 }];
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

/** Checks, calls and lookout that are due and not done. */
export const remindersNow = (c: CoachContext): Word[] => [
  ...lookReminder(c),
  ...callReminder(c),
  ...checkReminder(c),
];
