import { FULL_POWER } from '../lesson/watch/full-power.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { type Flight, lessonMemory } from './flight.ts';

/** What a pilot who looks at the needles knows has happened; empty while nothing has. */
export type Emergency = '' | 'engine-out' | 'partial-power' | 'abandoned';

const CLOSED = 0.15; // our choice: a throttle all but closed
const ROLLING_MPS = 3; // our choice: slower it is still lining up
/** Full throttle turns a fixed propeller no slower than this share of what the climb is planned with. */
const LEAST_REVPS_SHARE = 0.92; // estimate: more than heat or a gust takes
/** Slower than this share of the climbing speed the propeller turns slower by itself. */
const CLIMBING_SHARE = 0.85; // estimate

/** An engine takes so long from idle to full power. */
const SPOOLS_S = 4; // 14 CFR Part 60 (2014), table B2B 1.f.1: 2 to 4 s

const turnsTooSlowly = ({ scenario, plan }: Flight, s: Readonly<Snapshot>): boolean => {
  // A governor holds the rpm, and the gauges tell nothing
  if (scenario.aeroplane.propeller.kind !== 'fixed-pitch') return false;
  const { steady, iasMps } = plan.legs.upwind;
  return (
    s.throttle >= FULL_POWER &&
    s.carbHeat === 0 &&
    s.iasMps > CLIMBING_SHARE * iasMps &&
    s.engineRevps < LEAST_REVPS_SHARE * steady.revps
  );
};

/** Once found it stays: a lever drawn back afterwards proves nothing. */
const hasPartialPower = (flight: Flight, s: Readonly<Snapshot>): boolean => {
  const found = flight.weakSinceS !== null && s.timeS - flight.weakSinceS >= SPOOLS_S;
  if (!found) flight.weakSinceS = turnsTooSlowly(flight, s) ? (flight.weakSinceS ?? s.timeS) : null;
  return found;
};

/** Which emergency there is, by what stands on the panel and what was called: card and look follow it at once. */
export const emergencyNow = (flight: Flight, s: Readonly<Snapshot>): Emergency => {
  const { legs, said, engine } = lessonMemory(flight);
  if (legs.leg === 'stopped' || s.ended !== null) return '';
  if (engine !== null || (s.engineDead && !s.onGround)) return 'engine-out';
  if (s.onGround && said.some(({ what }) => what === 'stop')) return 'abandoned';
  const rolling = legs.leg === 'take-off-roll' && s.groundspeedMps > ROLLING_MPS;
  if (rolling && (s.engineDead || s.throttle < CLOSED)) return 'abandoned';
  return !s.onGround && hasPartialPower(flight, s) ? 'partial-power' : '';
};
