import { lookup } from '../../maths/tables.ts';
import type { Model } from '../../simulation/model.ts';
import { type SteadyRequest, solveSteady } from '../../simulation/performance/steady.ts';
import { mpsFromFpm } from '../../units/conversions.ts';

/** Ways of flying that a pilot has a habit for. */
export type RegimeName =
  | 'take-off'
  | 'climb'
  | 'cruise'
  | 'downwind'
  | 'abeam'
  | 'base'
  | 'final'
  | 'landing'
  | 'going-around';

/**
 * What practice has taught about one way of flying (a flap stage at a speed): which power, attitude and elevator
 * go with which climb or sink. Four lists that belong together, one entry a steady state, vertical speeds and
 * throttles rising.
 */
export interface Habit {
  readonly stage: number;
  readonly iasMps: number;
  readonly carbHeat: 0 | 1;
  readonly gear: 0 | 1;
  readonly propeller: number;
  readonly mixture: number;
  readonly verticalSpeedsMps: readonly number[];
  readonly throttles: readonly number[];
  readonly pitchesRad: readonly number[];
  /** Nose above the path at 1.15 times the stalling speed: higher only with the wheels about to touch. */
  readonly highestAlphaRad: number;
  /** Total elevator, trailing edge up positive. */
  readonly elevatorsUpRad: readonly number[];
}

type Power = Pick<SteadyRequest, 'throttle'> | Pick<SteadyRequest, 'verticalSpeedMps'>;

/** Where a habit is learnt (our choice: idle, twice downhill, level, full power). */
const POWERS: readonly Power[] = [
  { throttle: 0 },
  { verticalSpeedMps: mpsFromFpm(-700) },
  { verticalSpeedMps: mpsFromFpm(-350) },
  { verticalSpeedMps: 0 },
  { throttle: 1 },
];

const LEAST_OVER_STALL = 1.15; // our choice: a margin, slower is no habit

/** Heat, gear (1 down) and propeller lever that go with a way of flying; not given: ready to land. */
export interface Levers {
  readonly carbHeat?: 0 | 1;
  readonly gear?: 0 | 1;
  readonly propeller?: number;
}

/** Learns by flying: steady states at idle, two descents, level and full power, as far as each exists. */
export const learn = (
  model: Model,
  stage: number,
  iasMps: number,
  heightM: number,
  { carbHeat = 0, gear = 1, propeller = 1 }: Levers = {},
): Habit => {
  const { shape, air, runway } = model;
  const found = POWERS.map((power) =>
    solveSteady(shape, air, {
      iasMps,
      altitudeM: runway.thresholdElevationM + heightM,
      flapDeg: shape.aeroplane.flap.stages[stage]?.deg ?? 0,
      gear,
      propeller,
      bankRad: 0,
      carbHeat,
      ...power,
    }),
  )
    .flatMap((result) => (result.ok ? [result.steady] : []))
    .sort((a, b) => a.throttle - b.throttle)
    .filter((steady, i, all) => i === 0 || steady.throttle > (all[i - 1]?.throttle ?? 0) + 1e-3);
  if (found.length === 0)
    throw new Error(
      `${shape.aeroplane.id}: no steady flight was found at flap stage ${stage}, the pilot needs one`,
    );
  const flap = shape.aeroplane.flap.stages[stage];
  const lift = (flap?.maximumLiftCoefficient ?? 1) / (LEAST_OVER_STALL * LEAST_OVER_STALL);
  return {
    stage,
    iasMps,
    carbHeat,
    gear,
    propeller,
    mixture: found[found.length - 1]?.mixture ?? 1,
    highestAlphaRad: (lift - shape.cl0 - (flap?.liftCoefficient ?? 0)) / shape.clAlpha,
    verticalSpeedsMps: found.map((steady) => steady.verticalSpeedMps),
    throttles: found.map((steady) => steady.throttle),
    pitchesRad: found.map((steady) => steady.pitchRad),
    elevatorsUpRad: found.map((steady) => -steady.elevatorRad),
  };
};

export const throttleFor = (habit: Habit, verticalSpeedMps: number): number =>
  lookup(habit.verticalSpeedsMps, habit.throttles, verticalSpeedMps);

export const pitchFor = (habit: Habit, verticalSpeedMps: number): number =>
  lookup(habit.verticalSpeedsMps, habit.pitchesRad, verticalSpeedMps);

export const elevatorFor = (habit: Habit, throttle: number): number =>
  lookup(habit.throttles, habit.elevatorsUpRad, throttle);

/** With the throttle fully open. */
export const climbPitchRad = (habit: Habit): number => habit.pitchesRad[habit.pitchesRad.length - 1] ?? 0;
