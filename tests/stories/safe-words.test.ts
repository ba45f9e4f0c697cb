// What the coach says in bad flights, checked by one who knows only the physics and the table of dangers: nothing that
// would make it worse, the saving thing within a second and a half, and nothing else until it is cured.
// The hands are not the model pilot's: the independent student with faults, monkeys on the keys, and held controls.
import { describe, expect, it } from 'vitest';
import { COACH_STEPS, followCoach } from '../../src/flight/coach.ts';
import { asksOf } from '../../src/lesson/coach/asks.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { ftFromM, ktFromMps } from '../../src/units/conversions.ts';
import { type BadFlight, badFlights, flyBad } from '../support/bad-flights.ts';

const LONG = process.env.LAPWING_LONG === '1';
/** In the short run; all four hundred with LAPWING_LONG. */
const FLIGHTS = LONG ? 400 : 48;
const WITHIN_S = 1.5;

const margin = (s: Readonly<Snapshot>): number =>
  s.iasMps / (s.stallIasMps * Math.sqrt(Math.max(0.25, s.loadFactor)));

/** Dangers by physics alone, written down again here and a little beyond the coach's own limits. */
const inDanger = (s: Readonly<Snapshot>): string | null => {
  const ft = ftFromM(s.wheelClearanceM);
  if (s.onGround || ft < 60) return null;
  if (s.warner || margin(s) < 1.03) return 'stall';
  if (ft < 480 && Math.abs(s.bankRad) > 0.75) return 'bank';
  if (!s.engineDead && ft < 280 && -s.verticalSpeedMps > 5.6) return 'sink';
  if (!s.engineDead && ft < 480 && margin(s) < 1.15) return 'slow';
  return null;
};

/** What must never be asked for now. */
const forbidden = (text: string, s: Readonly<Snapshot>): string | null => {
  const ft = ftFromM(s.wheelClearanceM);
  if (s.onGround || ft < 25) return null;
  const asks = asksOf(text);
  if (margin(s) < 1.2 && asks.includes('nose-up')) return 'nose up when slow';
  if (margin(s) < 1.2 && asks.includes('less-power')) return 'power off when slow';
  if (ft < 190 && s.verticalSpeedMps < 1 && asks.includes('nose-down')) return 'nose down when low';
  if (ft < 190 && asks.includes('less-power')) return 'power off when low';
  if (ft < 150 && s.verticalSpeedMps < 0 && /\bcall\b|check/i.test(text)) return 'a call or a check when low';
  return null;
};

const fly = (flight: BadFlight) => {
  const said: string[] = [];
  const wrong: string[] = [];
  let dangerS = 0;
  let danger: string | null = null;
  let layer = 'lesson';
  let dangers = 0;
  const tell = (s: Readonly<Snapshot>, what: string): void => {
    wrong.push(
      `${flight.name}, ${s.timeS.toFixed(1)} s, ${ftFromM(s.wheelClearanceM).toFixed(0)} ft, ${ktFromMps(s.iasMps).toFixed(0)} kt (${margin(s).toFixed(2)} Vs), ${(ftFromM(s.verticalSpeedMps) * 60).toFixed(0)} ft/min: ${what}`,
    );
  };
  flyBad(flight, (flown, s) => {
    const now = inDanger(s);
    if (now === null) {
      danger = null;
      dangerS = 0;
    } else {
      if (danger === null) dangers += 1;
      danger = now;
      dangerS += 1 / 60;
    }
    if (s.step % COACH_STEPS !== 0) return;
    const text = followCoach(flown, s, flight.level, true);
    layer = flown.coach?.memory.layer ?? 'lesson';
    if (text !== null) {
      said.push(text);
      const why = forbidden(text, s);
      if (why !== null) tell(s, `${why}: "${text}"`);
      if (danger !== null && dangerS > 0.75 && layer !== 'safety')
        tell(s, `in danger (${danger}): "${text}"`);
    }
    if (danger !== null && dangerS > WITHIN_S && dangerS < WITHIN_S + 0.26 && layer !== 'safety')
      tell(s, `no word against ${danger} for ${WITHIN_S} s`);
  });
  return { said, wrong, dangers };
};

describe('in bad flights the coach', () => {
  const flights = badFlights(FLIGHTS);
  const flown = flights.map(fly);

  it('meets dangers enough to be tried', () => {
    const met = flown.filter(({ dangers }) => dangers > 0).length;
    process.stdout.write(
      `bad flights: ${flights.length}, in danger ${met}, dangers ${flown.reduce((sum, { dangers }) => sum + dangers, 0)}, sentences ${flown.reduce((sum, { said }) => sum + said.length, 0)}\n`,
    );
    expect(met).toBeGreaterThan(0.4 * flights.length);
  });

  it('says nothing that would make it worse, the saving thing in time, and nothing else meanwhile', () => {
    expect(flown.flatMap(({ wrong }) => wrong)).toEqual([]);
  });
});
