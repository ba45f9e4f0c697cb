// A go-around is never wrong: the pilot goes when it should, climbs away, comes round and lands.
import { describe, expect, it } from 'vitest';
import { alongM } from '../../src/aerodrome/runway.ts';
import { createPilot, type PilotMemory } from '../../src/pilot/pilot.ts';
import type { AirStart } from '../../src/simulation/scenario.ts';
import type { ControlSource } from '../../src/simulation/source.ts';
import { ftFromM, mFromFt } from '../../src/units/conversions.ts';
import { aeroplaneFiles } from '../support/aeroplanes.ts';
import { type Bend, flyDay } from '../support/circuit-flight.ts';

const everyAeroplane = aeroplaneFiles().map((name) => name.replace('.json', ''));

/** On the centreline of runway 22 at Curlew Sands (heading 220 magnetic, 219 true), so far before the threshold. */
const onFinal = (beforeM: number, height_ft: number, ias_kt: number, flap_deg: number): AirStart => ({
  east_m: -beforeM * Math.sin((219 * Math.PI) / 180),
  north_m: -beforeM * Math.cos((219 * Math.PI) / 180),
  height_ft,
  heading_deg: 220,
  ias_kt,
  flap_deg,
  gear: 'down',
  bank_deg: 0,
  flight_path_deg: -3,
});

interface Seen {
  readonly goArounds: number;
  readonly why: string;
  readonly decidedFt: number;
  readonly lowestAfterFt: number;
  readonly slowestAfterKt: number;
  readonly landed: boolean;
  readonly ended: string | null;
}

/** Flies with an eye on what happens from the decision to 400 ft. */
const watched = (day: Parameters<typeof flyDay>[0], bend: Bend = createPilot): Seen => {
  let decidedFt = Number.NaN;
  let lowestAfterFt = Number.POSITIVE_INFINITY;
  let slowestAfterKt = Number.POSITIVE_INFINITY;
  let why = '';
  let climbing = false;
  const watching: Bend = (model, plan) => {
    const pilot = bend(model, plan);
    return {
      ...pilot,
      next(seen, memory, controls) {
        pilot.next(seen, memory, controls);
        const heightFt = ftFromM(seen.heightM);
        if (memory.goArounds === 1 && Number.isNaN(decidedFt)) {
          decidedFt = heightFt;
          why = memory.goAroundWhy;
          climbing = true;
        }
        if (!climbing) return;
        lowestAfterFt = Math.min(lowestAfterFt, heightFt);
        slowestAfterKt = Math.min(slowestAfterKt, seen.iasMps / seen.stallIasMps);
        if (heightFt > 400) climbing = false;
      },
    };
  };
  const flown = flyDay(day, watching);
  return {
    goArounds: flown.goArounds,
    why,
    decidedFt,
    lowestAfterFt,
    slowestAfterKt,
    landed: flown.stopped,
    ended: flown.ended,
  };
};

describe('not stabilised at the gate', () => {
  it.each([
    ['too high', onFinal(1150, 460, 65, 20), 'not stabilised: high'],
    ['too low', onFinal(2300, 310, 65, 20), 'not stabilised: low'],
    ['too fast', onFinal(1500, 330, 95, 0), 'not stabilised'],
  ])('%s it goes around, comes round and lands', (_what, start, why) => {
    const seen = watched({ runway: '22', start, trimmed: true });
    expect(seen.goArounds).toBeGreaterThan(0);
    expect(seen.why).toContain(why);
    // Decided at a gate: 300 ft, at the latest 200 ft (common practice)
    expect(seen.decidedFt).toBeLessThan(300);
    expect(seen.decidedFt).toBeGreaterThan(150);
    // Power and attitude at once: little height is lost after the decision (common practice)
    expect(seen.lowestAfterFt).toBeGreaterThan(seen.decidedFt - 60);
    expect(seen.slowestAfterKt).toBeGreaterThan(1.1);
    expect(seen.ended).toBeNull();
    expect(seen.landed).toBe(true);
  });
});

/** Somebody takes the stick for a moment. */
const meddle =
  (elevator: number, seconds: number, belowM: number): Bend =>
  (model, plan) => {
    const pilot = createPilot(model, plan);
    let from = -1;
    const meddled: ControlSource<PilotMemory> = {
      ...pilot,
      next(seen, memory, controls) {
        pilot.next(seen, memory, controls);
        const overRunway = alongM(model.runway, seen.eastM, seen.northM) > 0 && seen.timeS > 60;
        if (from < 0 && overRunway && !seen.onGround && seen.wheelClearanceM < belowM) from = seen.timeS;
        if (from >= 0 && seen.timeS - from < seconds) controls.elevator = elevator;
      },
    };
    return meddled;
  };

describe('a spoilt round-out', () => {
  it.each(everyAeroplane)(
    'ballooned high by a snatch at the stick, the %s goes around and lands',
    (aeroplane) => {
      const seen = watched({ aeroplane, runway: '22', leg: 'final' }, meddle(0.75, 1.1, mFromFt(5)));
      expect(seen.ended).toBeNull();
      expect(seen.landed).toBe(true);
      expect(seen.goArounds).toBe(1);
      expect(seen.why).toMatch(/ballooned|bounced/);
    },
  );

  it('pushed up a little it lands from there without fuss', () => {
    const seen = watched({ runway: '22', leg: 'final' }, meddle(0.45, 0.4, mFromFt(3)));
    expect(seen.landed).toBe(true);
    expect(seen.goArounds).toBe(0);
  });
});

describe('the aeroplane is reconfigured in stages', () => {
  it('never raises flap in one movement, and keeps climbing', () => {
    const stages: number[] = [];
    const bend: Bend = (model, plan) => {
      const pilot = createPilot(model, plan);
      return {
        ...pilot,
        next(seen, memory, controls) {
          pilot.next(seen, memory, controls);
          if (memory.goArounds > 0 && memory.landings === 0 && seen.heightM < 150)
            if (stages.at(-1) !== controls.flapStage) stages.push(controls.flapStage);
        },
      };
    };
    flyDay({ runway: '22', start: onFinal(1150, 460, 65, 20), trimmed: true }, bend, 60);
    expect(stages.length).toBeGreaterThan(1);
    for (let i = 1; i < stages.length; i += 1) expect(stages[i]! - stages[i - 1]!).toBe(-1);
  });
});
