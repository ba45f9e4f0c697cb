import { isAbandoned } from '../lesson/coach/trouble.ts';
import { CLOSED_THROTTLE } from '../lesson/watch/full-power.ts';
import { isGoAroundDue } from '../lesson/watch/go-around.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { type Flight, lessonMemory } from './flight.ts';

/** What a pilot knows has happened; empty while nothing has. */
export type Emergency = '' | 'engine-out' | 'partial-power' | 'abandoned' | 'go-around';

const ROLLING_MPS = 3; // our choice: slower it is still lining up

/** Which emergency there is, by what the engine gives and what was called: card and look follow it at once. */
export const emergencyNow = (flight: Flight, s: Readonly<Snapshot>): Emergency => {
  const memory = lessonMemory(flight);
  const { legs, engine } = memory;
  if (legs.leg === 'stopped' || s.ended !== null) return '';
  if (engine !== null || (s.engineDead && !s.onGround)) return 'engine-out';
  if (isAbandoned({ m: memory, s })) return 'abandoned';
  const rolling = legs.leg === 'take-off-roll' && s.groundspeedMps > ROLLING_MPS;
  if (rolling && (s.engineDead || s.throttle < CLOSED_THROTTLE)) return 'abandoned';
  if (s.powerPartial && !s.onGround) return 'partial-power';
  return !s.onGround && isGoAroundDue(memory) ? 'go-around' : '';
};
