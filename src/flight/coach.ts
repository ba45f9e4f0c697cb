import { beginCoach, type CoachLevel, coach } from '../lesson/coach/coach.ts';
import { talkNow } from '../lesson/coach/talk.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { type CoachFollowing, type Flight, lessonMemory } from './flight.ts';
import { tellFlight } from './run.ts';

const beginFollowing = (): CoachFollowing => ({ memory: beginCoach(), lastS: 0, toldLevel: '' });

/** Steps between two looks of the coach: a quarter of a second. */
export const COACH_STEPS = 15;

/**
 * Lets the coach look, and keeps what it says with the flight; the sentence to say now, or null. What was said last
 * stays in `flight.coach.memory.text` while it holds. `counts`: the level is help that the flight is told of.
 */
export const followCoach = (
  flight: Flight,
  s: Readonly<Snapshot>,
  level: CoachLevel,
  counts: boolean,
): string | null => {
  // The flight has been set back: what was said has not been said yet
  if (flight.coach === null || s.timeS < flight.coach.lastS) flight.coach = beginFollowing();
  const following = flight.coach;
  following.lastS = s.timeS;
  if (counts && level !== following.toldLevel) {
    following.toldLevel = level;
    tellFlight(flight, 'coach', level);
  }
  const { lesson, limits } = flight;
  const { teaching } = flight.scenario.aerodrome.circuit;
  const context = { m: lessonMemory(flight), lesson, s, limits, teaching };
  const text = coach(following.memory, context, level, talkNow);
  if (text !== null) tellFlight(flight, following.memory.layer === 'safety' ? 'warned' : 'said', text);
  return text;
};
