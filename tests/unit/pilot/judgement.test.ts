// What the pilot makes of where it is: stabilised or not, which leg, how much runway.
import { describe, expect, it } from 'vitest';
import type { Briefing } from '../../../src/pilot/briefing/briefing.ts';
import { briefingFor } from '../../../src/pilot/briefing/briefing-for.ts';
import { elevatorFor, pitchFor, throttleFor } from '../../../src/pilot/briefing/habits.ts';
import { phaseHere } from '../../../src/pilot/joining.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { unstable } from '../../../src/pilot/stabilised.ts';
import { isSureToStop } from '../../../src/pilot/sure-stop.ts';
import { newPilotView, type PilotView } from '../../../src/pilot/view.ts';
import { neutralControls } from '../../../src/simulation/controls.ts';
import { solveSteady } from '../../../src/simulation/performance/steady.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { mFromFt, mpsFromFpm, mpsFromKt, radFromDeg } from '../../../src/units/conversions.ts';
import { dayScenario } from '../../support/circuit-flight.ts';

const { model, plan } = dayScenario({ runway: '22' });
const b: Briefing = briefingFor(model, plan);

describe('stabilised', () => {
  const pilot = createPilot(model, plan);
  const heightM = mFromFt(300);
  const good: PilotView = {
    ...newPilotView(),
    xM: model.runway.aimM - heightM / Math.tan(radFromDeg(3)),
    heightM,
    clearanceM: heightM,
    gear: 1,
  };
  const at = (view: Partial<PilotView>, kt = 0, bankDeg = 0): string => {
    const memory = pilot.begin(newSnapshot(), neutralControls());
    memory.turning = false;
    memory.settledIasMps = plan.approachIasMps + mpsFromKt(kt);
    memory.smoothBankRad = radFromDeg(bankDeg);
    memory.hands.flapStage = model.scenario.aeroplane.plan.finalStage;
    return unstable(b, memory, { ...good, ...view });
  };

  it('is nothing to say on slope, on speed, on the centreline', () => {
    expect(at({})).toBe('');
  });

  // FAA-S-ACS-6 IV.B: +10/-5 kt
  it.each([
    [9, ''],
    [11, 'fast'],
    [-4, ''],
    [-6, 'slow'],
  ])('%d kt off the approach speed says "%s"', (kt, said) => {
    expect(at({}, kt)).toBe(said);
  });

  // Flight Safety Foundation ALAR briefing note 7.1: bank within limits on a stabilised approach, 10 degrees here
  it.each([
    [8, ''],
    [12, 'banked'],
  ])('%d degrees of bank say "%s"', (bankDeg, said) => {
    expect(at({}, 0, bankDeg)).toBe(said);
  });

  // One light of four either way is a third of a degree, two are half a degree and more (ICAO Annex 14, PAPI)
  it.each([
    [3.3, ''],
    [3.7, 'high'],
    [2.3, 'low'],
  ])('%d degrees to the aim point say "%s"', (deg, said) => {
    expect(at({ xM: model.runway.aimM - heightM / Math.tan(radFromDeg(deg)) })).toBe(said);
  });

  it('wants the centreline', () => {
    expect(at({ yM: 20 })).toBe('');
    expect(at({ yM: 90 })).toBe('off the centreline');
  });
});

describe('the stop on what is left of the runway', () => {
  const short = dayScenario({ aerodrome: 'plover-meadow', runway: '31' });
  const meadow = briefingFor(short.model, short.plan);
  const isSure = (xM: number, kt: number): boolean => {
    const memory = createPilot(short.model, short.plan).begin(newSnapshot(), neutralControls());
    memory.regime = 'landing';
    memory.iasMps = mpsFromKt(kt);
    return isSureToStop(meadow, memory, { ...newPilotView(), xM, groundspeedMps: mpsFromKt(kt) });
  };

  // 640 m uphill: from 46 kt some 130 m of braking at 0.22 g; from 71 kt 11 m/s are to be flown off first
  it('is sure from the point, not from half way at 71 kt, nor from the last third', () => {
    expect(isSure(short.model.runway.specifiedM, 50)).toBe(true);
    expect(isSure(320, 71)).toBe(false);
    expect(isSure(500, 46)).toBe(false);
  });
});

describe('where am I', () => {
  const { corners } = b;
  const view = (xM: number, yM: number, trackDeg: number): PilotView => ({
    ...newPilotView(),
    xM,
    yM,
    heightM: 250,
    clearanceM: 250,
    trackRad: radFromDeg(trackDeg),
    groundspeedMps: 40,
  });

  it.each([
    ['upwind', view(1500, 20, 3)],
    ['crosswind', view(corners.crosswind.toX, 900, 84)],
    ['downwind', view(0, plan.spacingM + 100, 176)],
    ['base', view(corners.final.fromX - 50, 900, -95)],
    ['final', view(-1200, -30, 4)],
  ] as const)('finds itself on %s by place and track', (leg, seen) => {
    expect(phaseHere(b, seen, null, 0.5)).toBe(leg);
  });

  it('on the ground it takes off, or rolls out when it comes fast with the throttle closed', () => {
    const onGround = { ...newPilotView(), onGround: true };
    expect(phaseHere(b, onGround, null, 0)).toBe('take-off');
    expect(phaseHere(b, { ...onGround, groundspeedMps: 22 }, null, 0)).toBe('landing-roll');
    expect(phaseHere(b, { ...onGround, groundspeedMps: 22 }, null, 1)).toBe('take-off');
  });

  it('takes the leg it was asked for', () => {
    expect(phaseHere(b, view(0, 0, 0), 'base', 0.5)).toBe('base');
  });
});

describe('habits', () => {
  it.each(['cruise', 'downwind', 'base', 'final', 'landing'] as const)(
    '%s: more climb, more power',
    (name) => {
      const habit = b.habits[name];
      expect(habit.throttles.length).toBeGreaterThanOrEqual(4);
      for (let i = 1; i < habit.throttles.length; i += 1) {
        expect(habit.throttles[i]!).toBeGreaterThan(habit.throttles[i - 1]!);
        expect(habit.verticalSpeedsMps[i]!).toBeGreaterThan(habit.verticalSpeedsMps[i - 1]!);
        expect(habit.pitchesRad[i]!).toBeGreaterThan(habit.pitchesRad[i - 1]!);
      }
    },
  );

  it('says between its entries what the solver says there', () => {
    const habit = b.habits.final;
    const verticalSpeedMps = mpsFromFpm(-500);
    const { shape, air, runway } = model;
    const found = solveSteady(shape, air, {
      iasMps: habit.iasMps,
      altitudeM: runway.thresholdElevationM + plan.heightM / 4,
      flapDeg: shape.aeroplane.flap.stages[habit.stage]!.deg,
      gear: 1,
      bankRad: 0,
      carbHeat: habit.carbHeat,
      verticalSpeedMps,
    });
    if (!found.ok) throw new Error(found.why);
    // Straight lines between descents of 350 and 700 ft/min: a hundredth of throttle, a tenth of a degree
    expect(throttleFor(habit, verticalSpeedMps)).toBeCloseTo(found.steady.throttle, 1.7);
    expect(pitchFor(habit, verticalSpeedMps)).toBeCloseTo(found.steady.pitchRad, 2);
    expect(elevatorFor(habit, found.steady.throttle)).toBeCloseTo(-found.steady.elevatorRad, 2);
  });
});
