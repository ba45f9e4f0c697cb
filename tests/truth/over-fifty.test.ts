// Take-off to 50 ft and landing from 50 ft as the brief sums them: against what handbooks say of weight and wind, and
// against the step flown by hands of our own.
import { describe, expect, it } from 'vitest';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import type { RunsBrief } from '../../src/circuit/distances/types.ts';
import type { Weather } from '../../src/simulation/scenario.ts';
import { HEADWIND_TAKE_OFF_FROM_MEMORY, HEAVIER_TAKE_OFF } from '../reference/ground.ts';
import { aeroplaneNamed, everyAeroplane, variantOf } from '../support/aeroplanes.ts';
import { landingFrom50FtM, takeOffTo50FtM } from '../support/claims.ts';
import { northRunway, STILL } from '../support/flight.ts';
import { meant } from '../support/trust-table.ts';

const runsOf = (aeroplane = aeroplaneNamed('sandpiper'), weather: Partial<Weather> = {}): RunsBrief =>
  briefOf({ aeroplane, aerodrome: northRunway(), weather: { ...STILL, ...weather }, runway: '36' }).runs;

describe('the distances over 50 ft', () => {
  it('grow with weight as the handbook says', () => {
    const light = aeroplaneNamed('sandpiper');
    const { empty, flown } = light.massKg;
    const [[share, least, most]] = HEAVIER_TAKE_OFF.rows;
    const heavy = variantOf(light, {
      massKg: { empty, flown: share * flown, maximum: share * flown },
      // Every speed goes with the root of the weight
      speeds: { rotateKt: Math.sqrt(share) * light.speeds.rotateKt },
    });
    const ratio = runsOf(heavy).takeOff.modelM / runsOf(light).takeOff.modelM;
    expect(ratio).toBeGreaterThan(least - 0.01);
    // Rounded up to five metres
    expect(ratio).toBeLessThan(most + 0.02);
  });

  it('shrink with a headwind about as the handbook says (from memory)', () => {
    const [[lowest, highest]] = HEADWIND_TAKE_OFF_FROM_MEMORY.rows;
    const { rotateKt } = aeroplaneNamed('sandpiper').speeds;
    const still = runsOf();
    // At the wheels there is about three quarters of the reported wind
    const windy = runsOf(undefined, { windFromDegM: 0, windKt: (0.1 * rotateKt) / 0.75 });
    for (const kind of ['takeOff', 'landing'] as const) {
      const ratio = windy[kind].modelM / still[kind].modelM;
      expect(ratio).toBeGreaterThan(lowest);
      // The airborne part shrinks by less than the run
      expect(ratio).toBeLessThan(highest + 0.06);
    }
  });

  it.each(everyAeroplane().map((aeroplane) => [aeroplane.id, aeroplane] as const))(
    'are what the %s needs when it is flown so, rather more than less',
    (_, aeroplane) => {
      const { takeOff, landing } = runsOf(aeroplane);
      const flown = [takeOffTo50FtM(aeroplane), landingFrom50FtM(aeroplane)] as const;
      meant('Take-off to 50 ft', 'flown by hands that take up one attitude', takeOff.modelM, flown[0], '%');
      meant('Landing from 50 ft', 'flown with the throttle closed at 50 ft', landing.modelM, flown[1], '%');
      expect(takeOff.modelM / flown[0]).toBeGreaterThan(1);
      expect(takeOff.modelM / flown[0]).toBeLessThan(1.15);
      expect(landing.modelM / flown[1]).toBeGreaterThan(1);
      expect(landing.modelM / flown[1]).toBeLessThan(1.1);
    },
  );
});
