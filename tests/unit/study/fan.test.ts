import { describe, expect, it } from 'vitest';
import { type FanBlade, flyFan, POWER_AND_ATTITUDE } from '../../../src/study/fan.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';
import { beginFlight, scenarioOf } from '../../support/flight.ts';

const level = beginFlight(scenarioOf({ start: { height_ft: 2000 } }));
const root = { model: level.model, state: level.state, controls: level.controls };
const fan = flyFan(root);
const byName = (name: string) => fan.find(({ blade }) => blade.name === name)!;
const banked = (name: string, deg: number): FanBlade => ({
  name,
  throttle: 0,
  bankRad: radFromDeg(deg),
  pitchRad: 0,
});
const BANKED = [banked('banked left', -20), banked('banked right', 20)];
const endOf = (name: string) => byName(name).points.at(-1)!;

describe('the forecast fan', () => {
  it('has nine blades of sixty seconds, a point a second', () => {
    expect(fan).toHaveLength(9);
    for (const { points, endsEarly } of fan) {
      expect(endsEarly).toBe(false);
      expect(points).toHaveLength(61);
      expect(points.at(-1)!.timeS).toBeCloseTo(60, 9);
    }
  });

  it('leaves the aeroplane that it starts from alone', () => {
    const state = level.state.slice();
    flyFan(root, BANKED, 10);
    expect(level.state).toEqual(state);
  });

  // The start is a steady state, solved for: with nothing changed it stays what it is
  it('goes straight and level on when nothing is changed', () => {
    const end = endOf('this power, this attitude');
    const begin = byName('this power, this attitude').points[0]!;
    expect(Math.abs(end.heightM - begin.heightM)).toBeLessThan(3);
    expect(Math.abs(end.iasMps - begin.iasMps)).toBeLessThan(0.3);
    expect(Math.abs(end.eastM - begin.eastM)).toBeLessThan(5);
  });

  // "Point with pitch, speed with power" and "power for sink": a lower nose descends and is faster, more power climbs
  // (FAA-H-8083-3C ch. 3)
  it('descends faster with a lower nose and climbs with more power', () => {
    expect(endOf('this power, nose lower').heightM).toBeLessThan(
      endOf('this power, this attitude').heightM - 50,
    );
    expect(endOf('this power, nose lower').iasMps).toBeGreaterThan(
      endOf('this power, this attitude').iasMps + 2,
    );
    expect(endOf('more power, this attitude').heightM).toBeGreaterThan(
      endOf('less power, this attitude').heightM + 50,
    );
  });

  // Radius of a turn: V^2 / (g tan bank); at 80 kt and 20 degrees some 475 m, so a minute goes well round to that side
  it('turns to the side of the bank', () => {
    const turning = flyFan(root, BANKED);
    const side = (name: string) =>
      turning.find(({ blade }) => blade.name === name)!.points[30]!.eastM - turning[0]!.points[0]!.eastM;
    expect(side('banked right')).toBeGreaterThan(300);
    expect(side('banked left')).toBeLessThan(-300);
  });

  it('says when a blade meets the ground', () => {
    const low = beginFlight(scenarioOf({ start: { height_ft: 60 } }));
    const down = flyFan(
      { model: low.model, state: low.state, controls: low.controls },
      POWER_AND_ATTITUDE.slice(0, 1),
      60,
    );
    expect(down[0]!.endsEarly).toBe(true);
    expect(down[0]!.points.length).toBeLessThan(61);
  });
});
