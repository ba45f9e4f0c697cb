// Whole circuits in wind: crosswinds at the aeroplane's limit, a tailwind on base, a strong and gusty headwind.
import { describe, expect, it, test } from 'vitest';
import { degFromRad } from '../../src/units/conversions.ts';
import { aeroplaneFiles, aeroplaneNamed } from '../support/aeroplanes.ts';
import { type CircuitFlown, flyDay } from '../support/circuit-flight.ts';

const everyAeroplane = aeroplaneFiles().map((name) => name.replace('.json', ''));

const stopsOnTheRunway = (flown: CircuitFlown): void => {
  expect(flown.ended).toBeNull();
  expect(flown.stopped).toBe(true);
  expect(flown.stop.remainingM).toBeGreaterThan(20);
  // Half of a 23 m runway, less the track of the wheels
  expect(Math.abs(flown.stop.centrelineM)).toBeLessThan(8);
};

describe.each(
  everyAeroplane.flatMap((aeroplane) => [
    [aeroplane, 'left', -90],
    [aeroplane, 'right', 90],
  ]) as [string, string, number][],
)('the %s in a crosswind at its limit from the %s', (aeroplane, _side, windDeg) => {
  const windKt = aeroplaneNamed(aeroplane).limits.crosswindKt;
  const flown = flyDay({ aeroplane, runway: '22', windDeg, windKt });
  const touch = flown.touchdowns[0]!;

  it('lands and stops on the runway', () => stopsOnTheRunway(flown));

  // FAA-S-ACS-6 IV.B: no side drift, axis aligned with and over the centreline. The numbers are common practice.
  it('touches without drift, straight, near the centreline', () => {
    expect(Math.abs(touch.driftKt)).toBeLessThan(2);
    expect(Math.abs(touch.crabDeg)).toBeLessThan(5);
    expect(Math.abs(touch.centrelineM)).toBeLessThan(5);
    expect(touch.noseFirst).toBe(false);
  });

  // FAA-S-ACS-6 IV.B: within 400 ft beyond the point; not before the aim point: common practice
  it('touches between the aim point and 400 ft beyond the specified point', () => {
    expect(touch.pastAimM).toBeGreaterThan(0);
    expect(touch.pastSpecifiedFt).toBeLessThan(400);
  });

  // Flown by track, not by heading (FAA-H-8083-3C ch. 8)
  it('keeps downwind parallel to the runway', () => {
    expect(flown.downwind.offM).toBeLessThan(60);
  });

  // Never above 30 degrees in the turn to final (South African flight-instructor procedures)
  it('does not steepen the turn to final', () => {
    expect(flown.bankDeg.final).toBeLessThanOrEqual(30);
  });

  it('turns base within 5 degrees of the wind-corrected point', () => {
    expect(Math.abs(flown.baseTurnDeg - degFromRad(flown.plan.baseTurnAngleRad))).toBeLessThan(5);
  });
});

test('with 10 kt behind it on base it leads the turn and does not fly through the centreline', () => {
  // Left-hand circuit: base is flown to the right as seen along the landing, a wind from the left pushes
  const flown = flyDay({ runway: '22', windDeg: -90, windKt: 10 });
  stopsOnTheRunway(flown);
  // One runway width: common practice
  expect(flown.overshootM).toBeLessThan(23);
  expect(flown.bankDeg.final).toBeLessThanOrEqual(30);
  expect(flown.goArounds).toBe(0);
});

test('a strong headwind brings the base turn forward', () => {
  // The design's table: earlier with headwind on final, 45 degrees in still air
  const still = flyDay({ runway: '22' });
  const windy = flyDay({ runway: '22', windKt: 20 });
  stopsOnTheRunway(windy);
  expect(windy.baseTurnDeg).toBeLessThan(still.baseTurnDeg - 4);
  expect(Math.abs(windy.baseTurnDeg - degFromRad(windy.plan.baseTurnAngleRad))).toBeLessThan(5);
});

describe.each([1, 2, 3, 4])('20 kt gusting 30 down the runway, seed %d', (seed) => {
  const flown = flyDay({ runway: '22', windKt: 20, gustKt: 30, seed });
  const touch = flown.touchdowns[0]!;

  it('lands and stops', () => stopsOnTheRunway(flown));

  // Half the gust on the approach speed (FAA-H-8083-3C p. 9-20)
  it('carries half of the gust on the approach', () => {
    const { finalKt } = flown.scenario.aeroplane.speeds;
    const gate = flown.gates.find((g) => g.heightFt === 300)!;
    expect(gate.iasKt).toBeGreaterThan(finalKt - 5);
    expect(gate.iasKt).toBeLessThan(finalKt + 5 + 10);
  });

  // Common practice: firm, no more, in gusts of 10 kt
  it('touches no harder than firmly', () => {
    expect(touch.sinkFpm).toBeLessThan(450);
    expect(Math.abs(touch.centrelineM)).toBeLessThan(5);
  });

  it('keeps away from the stall', () => {
    expect(flown.warnerS).toBeLessThan(1);
  });
});
