import { clamp } from '../maths/functions.ts';
import type { ControlSource } from '../session/source.ts';
import { type Controls, copyControls, neutralControls, quantiseControls } from '../simulation/controls.ts';
import type { Model } from '../simulation/model.ts';
import { observe } from '../simulation/observe.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../simulation/snapshot.ts';
import type { State } from '../simulation/state.ts';
import { step } from '../simulation/step.ts';
import { radFromDeg } from '../units/conversions.ts';

/** One way of going on: what the hands would change now, and then keep. */
export interface FanBlade {
  readonly name: string;
  /** Added to the throttle as it stands. */
  readonly throttle: number;
  /** Bank to roll to, + right; null: the bank of now. */
  readonly bankRad: number | null;
  /** Nose up from the attitude of now. */
  readonly pitchRad: number;
}

/** A point of a future path, a second after the one before. */
export interface FanPoint {
  readonly timeS: number;
  readonly eastM: number;
  readonly northM: number;
  readonly heightM: number;
  readonly iasMps: number;
}

export interface Fan {
  readonly blade: FanBlade;
  readonly points: readonly FanPoint[];
  /** It meets the ground, or ends otherwise, within the time. */
  readonly endsEarly: boolean;
}

const NOSE_RAD = radFromDeg(3);
const POWER = 0.12;

const powers = [
  { name: 'less power', throttle: -POWER },
  { name: 'this power', throttle: 0 },
  { name: 'more power', throttle: POWER },
] as const;

/** Side view: three powers, three attitudes. */
export const POWER_AND_ATTITUDE: readonly FanBlade[] = powers.flatMap(({ name, throttle }) => [
  { name: `${name}, nose lower`, throttle, bankRad: null, pitchRad: -NOSE_RAD },
  { name: `${name}, this attitude`, throttle, bankRad: null, pitchRad: 0 },
  { name: `${name}, nose higher`, throttle, bankRad: null, pitchRad: NOSE_RAD },
]);

/** What the fan starts from: the aeroplane as it is, which is left alone. */
export interface FanRoot {
  readonly model: Model;
  readonly state: State;
  readonly controls: Readonly<Controls>;
}

const PITCH_GAIN = 2.2;
const PITCH_RATE_GAIN = 0.9;
const PITCH_HOLDING_PER_S = 1.2;
const BANK_GAIN = 1.4;
const ROLL_RATE_GAIN = 0.35;
const HOLD_STEPS = 3;

/** Hands that hold an attitude and leave the power: the forecast of what is being flown, not of a good pilot. */
const holdAttitude = (blade: FanBlade): ControlSource<HoldMemory> => ({
  name: 'attitude held',
  begin: (seen, controls) => ({
    pitchRad: seen.pitchRad + blade.pitchRad,
    bankRad: blade.bankRad ?? seen.bankRad,
    throttle: clamp(controls.throttle + blade.throttle, 0, 1),
    elevator: controls.elevator,
  }),
  next: (seen, m, controls) => {
    controls.throttle = m.throttle;
    if (seen.step % HOLD_STEPS !== 0) return;
    const off = m.pitchRad - seen.pitchRad;
    m.elevator = clamp(m.elevator + (PITCH_HOLDING_PER_S * off * HOLD_STEPS) / STEP_HZ, -1, 1);
    controls.elevator = m.elevator + PITCH_GAIN * off - PITCH_RATE_GAIN * seen.pitchRateRadps;
    controls.aileron = BANK_GAIN * (m.bankRad - seen.bankRad) - ROLL_RATE_GAIN * seen.rollRateRadps;
  },
});

export interface HoldMemory {
  pitchRad: number;
  bankRad: number;
  throttle: number;
  elevator: number;
}

const pointOf = (s: Readonly<Snapshot>): FanPoint => ({
  timeS: s.timeS,
  eastM: s.eastM,
  northM: s.northM,
  heightM: s.heightM,
  iasMps: s.iasMps,
});

/** Where each way of going on leads in so many seconds: same model, same wind, same gusts. */
export const flyFan = (
  root: FanRoot,
  blades: readonly FanBlade[] = POWER_AND_ATTITUDE,
  seconds = 60,
): readonly Fan[] => blades.map((blade) => flyBlade(root, blade, seconds));

const flyBlade = ({ model, state: now, controls: hands }: FanRoot, blade: FanBlade, seconds: number): Fan => {
  const state = now.slice();
  const controls = neutralControls();
  copyControls(hands, controls);
  const seen = newSnapshot();
  observe(model, state, controls, seen);
  const source = holdAttitude(blade);
  const memory = source.begin(seen, controls);
  const points = [pointOf(seen)];
  const steps = seconds * STEP_HZ;
  for (let i = 1; i <= steps; i += 1) {
    source.next(seen, memory, controls);
    quantiseControls(controls, model.topStage);
    step(model, state, controls);
    observe(model, state, controls, seen);
    const over = seen.ended !== null || seen.onGround;
    if (i % STEP_HZ === 0 || over) points.push(pointOf(seen));
    if (over) return { blade, points, endsEarly: true };
  }
  return { blade, points, endsEarly: false };
};
