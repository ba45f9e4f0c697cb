// Common practice: with the rudder assist the feet keep the aeroplane straight on its wheels; a pedal overrides.
import { describe, expect, it } from 'vitest';
import { AT } from '../../../src/simulation/state.ts';
import { wrapPi } from '../../../src/units/angles.ts';
import { degFromRad, radFromDeg } from '../../../src/units/conversions.ts';
import { beginFlight, fly, scenarioOf } from '../../support/flight.ts';

/** Twelve seconds at full power from a stand 5 degrees off the runway's line: how far off the nose is then. */
const roll = (rudderAssist: boolean, rudder: number): number => {
  const flight = beginFlight(scenarioOf({ rudderAssist }));
  flight.state[AT.heading] = radFromDeg(5);
  const seen = fly(flight, 12, (_, controls) => {
    controls.throttle = 1;
    controls.rudder = rudder;
  });
  return degFromRad(wrapPi(seen.headingRadT));
};

describe('the feet of the rudder assist, on the wheels', () => {
  it('bring the nose onto the line of the runway', () => {
    expect(Math.abs(roll(true, 0))).toBeLessThan(0.5);
  });

  it('leave it to a pedal that is pressed', () => {
    expect(roll(true, 0.12)).toBeGreaterThan(6);
  });

  it('are not there without the assist: full power takes the nose left', () => {
    expect(roll(false, 0)).toBeLessThan(0);
  });
});
