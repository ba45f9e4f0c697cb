import { describe, expect, it } from 'vitest';
import { beginHand, type HandMemory, type HandStyle, moveHand } from '../../../src/input/hand.ts';
import { type Intent, newIntent } from '../../../src/input/intent.ts';
import { begin, startControls } from '../../../src/simulation/begin.ts';
import { copyControls, neutralControls, quantiseControls } from '../../../src/simulation/controls.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { observe } from '../../../src/simulation/observe.ts';
import { type AirStart, MODEL_VERSION, STEP_HZ } from '../../../src/simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';
import { step } from '../../../src/simulation/step.ts';
import { degFromRad, ktFromMps } from '../../../src/units/conversions.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';

const LEVEL: AirStart = {
  east_m: 2000,
  north_m: 2000,
  height_ft: 1000,
  heading_deg: 42,
  ias_kt: 80,
  flap_deg: 0,
  gear: 'down',
  bank_deg: 0,
  flight_path_deg: 0,
};

const trainer = () => aeroplaneNamed('sandpiper');

interface Look {
  readonly s: Snapshot;
  readonly memory: HandMemory;
}

/** Flies the trainer by the hand alone for some seconds; `ask` says what the pilot's keys are at each instant. */
const fly = (
  style: HandStyle,
  seconds: number,
  ask: (timeS: number, intent: Intent) => void,
  start: AirStart | 'line-up' = LEVEL,
): Look[] => {
  const aeroplane = trainer();
  const model = prepare({
    modelVersion: MODEL_VERSION,
    exercise: 'normal-circuit',
    aeroplane,
    aerodrome: aerodromeNamed('curlew-sands'),
    runway: '22',
    weather: {
      windFromDegM: 0,
      windKt: 0,
      gustKt: null,
      turbulence: 'none',
      temperatureC: 15,
      dewPointC: null,
      qnhHpa: 1013.25,
    },
    start: { at: start, trimmed: start !== 'line-up', leg: null },
    seed: 1,
    assists: { rudder: true },
    failures: [],
    circuits: 1,
  });
  const state = begin(model);
  const controls = startControls(model);
  const snapshot = newSnapshot();
  observe(model, state, controls, snapshot);
  const memory = beginHand(style, snapshot, controls);
  const looks: Look[] = [];
  const used = neutralControls();
  for (let at = 0; at < seconds * STEP_HZ; at += 1) {
    const intent = newIntent();
    ask(at / STEP_HZ, intent);
    moveHand(memory, snapshot, intent, aeroplane, controls);
    quantiseControls(controls, aeroplane.flap.stages.length - 1);
    copyControls(controls, used);
    step(model, state, used);
    observe(model, state, used, snapshot);
    looks.push({ s: { ...snapshot }, memory: { ...memory } });
  }
  return looks;
};

const at = (looks: readonly Look[], seconds: number): Look =>
  looks[Math.round(seconds * STEP_HZ) - 1] as Look;
const pitchDeg = (look: Look): number => degFromRad(look.s.pitchRad);

describe('the hand that holds', () => {
  it('moves the wanted attitude at 3 degrees a second while a key is held (product.md)', () => {
    const looks = fly('hold', 6, (t, i) => {
      if (t >= 1 && t < 2) i.pitch = 1;
    });
    const moved = degFromRad(at(looks, 2).memory.wantedPitchRad - at(looks, 1).memory.wantedPitchRad);
    expect(moved).toBeCloseTo(3, 1);
    expect(Math.abs(pitchDeg(at(looks, 6)) - pitchDeg(at(looks, 1)) - 3)).toBeLessThan(0.5);
  });

  it('moves the stick to its stops and back while the aeroplane stands, for "controls full and free"', () => {
    // Back, and at once forward: a second and a half each, as one does it
    const looks = fly(
      'hold',
      4,
      (t, i) => {
        if (t < 3) i.pitch = t < 1.5 ? 1 : -1;
      },
      'line-up',
    );
    expect(at(looks, 1.5).s.elevator).toBeGreaterThan(0.9);
    expect(at(looks, 3).s.elevator).toBeLessThan(-0.9);
    expect(Math.abs(at(looks, 4).s.elevator)).toBeLessThan(0.05);
  });

  it('keeps the attitude when the power comes off, and needs a pull for it (less power drops the nose)', () => {
    const looks = fly('hold', 12, (t, i) => {
      if (t >= 1 && t < 2.5) i.power = -1;
    });
    expect(Math.abs(pitchDeg(at(looks, 12)) - pitchDeg(at(looks, 1)))).toBeLessThan(0.7);
    expect(at(looks, 12).s.heldPressureDegKpa).toBeGreaterThan(0.5);
  });

  it('moves the load from the hand to the wheel at constant attitude when trimmed', () => {
    const looks = fly('hold', 14, (t, i) => {
      if (t >= 1 && t < 2.5) i.power = -1;
      if (t >= 10 && t < 12) i.trim = 1;
    });
    const before = at(looks, 10);
    const after = at(looks, 12);
    expect(after.s.heldPressureDegKpa).toBeLessThan(before.s.heldPressureDegKpa - 0.5);
    expect(Math.abs(pitchDeg(after) - pitchDeg(before))).toBeLessThan(0.3);
  });

  it('shows what trim alone does while let go: a nose that was held up falls', () => {
    const looks = fly('hold', 14, (t, i) => {
      if (t >= 1 && t < 2.5) i.power = -1;
      if (t >= 12) i.letGo = true;
    });
    expect(at(looks, 14).s.heldPressureDegKpa).toBeCloseTo(0, 6);
    expect(pitchDeg(at(looks, 14))).toBeLessThan(pitchDeg(at(looks, 12)) - 1.5);
  });

  it('never holds more than one hand can', () => {
    const limit = trainer().pitch.handLimitDegKpa;
    const looks = fly('hold', 8, (t, i) => {
      i.pitch = t < 3 ? -1 : 1;
    });
    const most = Math.max(...looks.map((look) => Math.abs(look.s.heldPressureDegKpa)));
    expect(most).toBeLessThan(limit * 1.06);
    expect(most).toBeGreaterThan(limit * 0.2);
  });

  it('lifts off by taps as well as by one long pull', () => {
    const looks = fly(
      'hold',
      32,
      (timeS, intent) => {
        intent.power = timeS < 3 ? 1 : 0;
        // From 17 s, near 52 kt, a tap of 150 ms every half second
        intent.pitch = timeS > 17 && timeS % 0.5 < 0.15 ? 1 : 0;
      },
      'line-up',
    );
    const off = looks.find(({ s }) => s.wheelClearanceM > 1);
    expect(off, 'in the air').toBeDefined();
    // The claimed ground roll at 52 kt and the pull that follows: in the air before 75 kt
    expect(ktFromMps(off?.s.iasMps ?? 999)).toBeLessThan(75);
  });

  it('lets the bank stay where it was put', () => {
    const looks = fly('hold', 12, (t, i) => {
      if (t >= 1 && t < 2) i.roll = 1;
    });
    const bank = degFromRad(at(looks, 4).s.bankRad);
    expect(bank).toBeGreaterThan(10);
    expect(Math.abs(degFromRad(at(looks, 12).s.bankRad) - bank)).toBeLessThan(1.5);
  });
});

describe('the stick', () => {
  it('springs back when let go, to where the wheel holds it', () => {
    const looks = fly('stick', 4, (t, i) => {
      if (t >= 1 && t < 1.3) i.pitch = 1;
    });
    expect(at(looks, 1.3).s.elevator).toBeGreaterThan(0.1);
    expect(at(looks, 2).s.elevator).toBe(0);
  });

  it('lets the bank stay with the aileron neutral', () => {
    const looks = fly('stick', 5, (t, i) => {
      if (t >= 1 && t < 1.6) i.roll = -1;
    });
    expect(at(looks, 3).s.aileron).toBe(0);
    expect(degFromRad(at(looks, 3).s.bankRad)).toBeLessThan(-5);
  });
});
