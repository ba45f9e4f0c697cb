import type { CircuitLeg, PathPoint } from '../../circuit/types.ts';
import type { TurnOnto } from '../names.ts';
import { isYetToPass } from '../procedures/watch-traffic.ts';
import type { CoachContext } from './context.ts';

const ONTO: Partial<Record<string, { readonly leg: CircuitLeg; readonly onto: TurnOnto }>> = {
  upwind: { leg: 'upwind', onto: 'crosswind' },
  'go-around': { leg: 'upwind', onto: 'crosswind' },
  crosswind: { leg: 'crosswind', onto: 'downwind' },
  downwind: { leg: 'downwind', onto: 'base' },
  base: { leg: 'base', onto: 'final' },
};

/** Slower along the leg than this, nothing can be said about when. */
const CLOSING_MPS = 5; // our choice: slower is taxiing

/** Seconds until abreast of a point of the planned path, along a leg's track; null where it is not being closed. */
export const secondsAlong = ({ lesson, s }: CoachContext, leg: CircuitLeg, at: PathPoint): number | null => {
  const { sinTrack, cosTrack } = lesson.lines[leg];
  const leftM = (at.eastM - s.eastM) * sinTrack + (at.northM - s.northM) * cosTrack;
  const closing = s.velocityEastMps * sinTrack + s.velocityNorthMps * cosTrack;
  return closing < CLOSING_MPS ? null : leftM / closing;
};

/** Seconds until the planned place of the next turn; null where none is ahead. */
export const secondsToTurn = (c: CoachContext): number | null => {
  const next = ONTO[c.m.legs.leg];
  return next === undefined ? null : secondsAlong(c, next.leg, c.lesson.plan.turns[next.onto].from);
};

export const turnAhead = (leg: string): TurnOnto | null => ONTO[leg]?.onto ?? null;

/** The base turn is not the plan's: the tower has asked for more downwind or an orbit, or one ahead has yet to pass. */
export const isTheTowersTurn = ({ m, lesson, s }: CoachContext, onto: TurnOnto): boolean => {
  if (onto !== 'base') return false;
  const asked = m.said.some(
    ({ what, circuit, obeyedS }) =>
      circuit === m.legs.circuit &&
      (what === 'extend' || what === 'number-two' || (what === 'orbit' && obeyedS === null)),
  );
  return asked || (m.procedures !== null && isYetToPass(m.procedures, lesson, s));
};
