// A still day: what an instructor expects of a good circuit, and what the design's table "What must hold" asks.
import { describe, expect, it } from 'vitest';
import { degFromRad } from '../../src/units/conversions.ts';
import { aeroplaneFiles } from '../support/aeroplanes.ts';
import { flyDay } from '../support/circuit-flight.ts';

const everyAeroplane = aeroplaneFiles().map((name) => name.replace('.json', ''));

describe.each(everyAeroplane)('the %s on a still day at Curlew Sands', (aeroplane) => {
  const flown = flyDay({ aeroplane, runway: '22' });
  const { plan, touchdowns, gates, downwind } = flown;
  const touch = touchdowns[0]!;

  it('goes round once, lands and stops', () => {
    expect(flown.ended).toBeNull();
    expect(flown.stopped).toBe(true);
    expect(touchdowns).toHaveLength(1);
    expect(flown.goArounds).toBe(0);
  });

  // FAA-S-ACS-6 III.B: altitude ±100 ft, airspeed ±10 kt
  it('holds height and speed on downwind within the licence test', () => {
    expect(downwind.lowFt).toBeGreaterThan(900);
    expect(downwind.highFt).toBeLessThan(1100);
    const wantedKt = flown.scenario.aeroplane.speeds.downwindKt;
    expect(downwind.slowKt).toBeGreaterThan(wantedKt - 10);
    expect(downwind.fastKt).toBeLessThan(wantedKt + 10);
  });

  // Common practice: parallel to the runway within a wing span or two
  it('flies downwind parallel to the runway', () => {
    expect(downwind.offM).toBeLessThan(30);
  });

  // The design's table: within 5 degrees of the wind-corrected point; 45 degrees in still air (FAA-H-8083-3C ch. 8)
  it('turns base 45 degrees behind the wing', () => {
    expect(Math.abs(flown.baseTurnDeg - degFromRad(plan.baseTurnAngleRad))).toBeLessThan(5);
    expect(Math.abs(flown.baseTurnDeg - 45)).toBeLessThan(5);
  });

  // Medium bank level, 25 to 30 degrees (FAA-H-8083-3C ch. 8); 15 to 25 onto final, never above 30 (SA FI procedures)
  it('turns with the banks of the trade', () => {
    expect(flown.bankDeg.level).toBeGreaterThan(20);
    expect(flown.bankDeg.level).toBeLessThan(30);
    expect(flown.bankDeg.final).toBeGreaterThan(14);
    expect(flown.bankDeg.final).toBeLessThan(25);
  });

  it('rolls out on the centreline without flying through it', () => {
    expect(flown.overshootM).toBeLessThan(20);
  });

  // The wide circuit is planned down the lights: rolled out at 300 to 400 ft, as the design says
  it('rolls out on final on the planned height', () => {
    expect(flown.rollOutFt).toBeGreaterThan(300);
    expect(flown.rollOutFt).toBeLessThan(400);
  });

  // FAA-S-ACS-6 IV.B: approach speed +10/-5 kt; two white and two red on the slope (ICAO Annex 14, PAPI)
  it.each([300, 200])(
    'is on speed, on the centreline and sees two white and two red at %d ft',
    (heightFt) => {
      const gate = gates.find((g) => g.heightFt === heightFt)!;
      const wantedKt = flown.scenario.aeroplane.speeds.finalKt;
      expect(gate.iasKt).toBeGreaterThan(wantedKt - 5);
      expect(gate.iasKt).toBeLessThan(wantedKt + 10);
      expect(Math.abs(gate.centrelineM)).toBeLessThan(10);
      expect(Math.abs(gate.bankDeg)).toBeLessThan(10);
      expect(gate.lights).toBe('WWRR');
    },
  );

  // FAA-S-ACS-6 IV.B: at or within 400 ft beyond the specified point
  it('touches at the specified point or within 400 ft beyond it', () => {
    expect(touch.pastSpecifiedFt).toBeGreaterThan(0);
    expect(touch.pastSpecifiedFt).toBeLessThan(400);
  });

  // Common practice: a smooth arrival sinks less than 200 ft/min; straight, on the centreline, main wheels first
  it('touches gently, straight, main wheels first', () => {
    expect(touch.sinkFpm).toBeLessThan(200);
    expect(Math.abs(touch.centrelineM)).toBeLessThan(2);
    expect(Math.abs(touch.crabDeg)).toBeLessThan(3);
    expect(Math.abs(touch.driftKt)).toBeLessThan(1);
    expect(touch.noseFirst).toBe(false);
    expect(touch.pitchDeg).toBeGreaterThan(3);
  });

  // FAA-H-8083-3C ch. 9: held off until just above the stall
  it('holds off until the speed is nearly gone', () => {
    const stallKt = Math.min(
      ...Object.entries(flown.scenario.aeroplane.claims)
        .filter(([name]) => name.startsWith('stall'))
        .map(([, claim]) => claim.value),
    );
    expect(touch.iasKt).toBeLessThan(1.2 * stallKt);
    expect(touch.iasKt).toBeGreaterThan(0.95 * stallKt);
  });

  it('stops on the runway with some of it left', () => {
    expect(flown.stop.remainingM).toBeGreaterThan(50);
    expect(Math.abs(flown.stop.centrelineM)).toBeLessThan(3);
  });

  it('never wakes the stall warner above 20 ft', () => {
    expect(flown.warnerS).toBe(0);
  });

  // Common practice: trimmed means no force in the hand; "light" ends near half a degree times a kilopascal
  it('trims the force away on downwind', () => {
    expect(flown.heldPressure).toBeLessThan(0.3);
  });
});
