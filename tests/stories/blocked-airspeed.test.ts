// The airspeed indicator blocked in flight: the model pilot, who has no other airspeed, finds it out by attitude and
// lands by it (common practice: attitude plus power is performance). The stall warner
// never sounds on the way.
import { describe, expect, it } from 'vitest';
import { createPilot } from '../../src/pilot/pilot.ts';
import { ktFromMps } from '../../src/units/conversions.ts';
import { aeroplaneFiles } from '../support/aeroplanes.ts';
import { dayScenario } from '../support/circuit-flight.ts';
import { beginFlight, flyStep } from '../support/flight.ts';

const LONGEST_S = 700;
const SAFE_M = 15;

const flown = (aeroplane: string, atS: number | null, day = {}) => {
  const { scenario, plan } = dayScenario({ aeroplane, ...day });
  const failures = atS === null ? [] : [{ atS, what: 'airspeed-blocked' as const, amount: 0.5 }];
  const flight = beginFlight({ ...scenario, failures });
  const pilot = createPilot(flight.model, plan);
  const memory = pilot.begin(flight.seen, flight.controls);
  let warned = false;
  let furthestOffKt = 0;
  for (let i = 0; i < LONGEST_S * 60 && flight.seen.ended === null; i += 1) {
    flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
    const { seen } = flight;
    if (seen.wheelClearanceM > SAFE_M) {
      warned ||= seen.warner;
      furthestOffKt = Math.max(furthestOffKt, Math.abs(ktFromMps(seen.shownIasMps - seen.iasMps)));
    }
    if (seen.parked && i > 3600) break;
  }
  return { seen: flight.seen, memory, warned, furthestOffKt };
};

describe.each(aeroplaneFiles().map((name) => name.replace('.json', '')))(
  '%s, its airspeed indicator',
  (aeroplane) => {
    it.each([
      ['blocked on downwind, lands by attitude', 190],
      ['not blocked, believes its needle', null],
    ] as const)('%s', (_when, atS) => {
      const { seen, memory, warned, furthestOffKt } = flown(aeroplane, atS);
      expect(seen.ended).toBeNull();
      expect(seen.parked).toBe(true);
      expect(seen.onRunway).toBe(true);
      expect(warned).toBe(false);
      expect(memory.needleDead).toBe(atS !== null);
      if (atS !== null) expect(furthestOffKt).toBeGreaterThan(10);
      else expect(furthestOffKt).toBe(0);
    });
  },
);

describe('a needle that jumps', () => {
  it.each([
    { windDeg: 300, windKt: 15, gustKt: 25, turbulence: 'moderate' as const, seed: 5 },
    { windDeg: 90, windKt: 14, turbulence: 'light' as const },
    { windDeg: 20, windKt: 15, gustKt: 25 },
  ])('is believed in %o', (day) => {
    expect(flown('sandpiper', null, day).memory.needleDead).toBe(false);
  });

  it('is missed in rough air when it lies still', () => {
    const rough = { windDeg: 20, windKt: 12, turbulence: 'moderate' as const };
    expect(flown('sandpiper', 100, rough).memory.needleDead).toBe(true);
  });
});
