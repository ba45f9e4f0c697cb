import { INTEGRATED } from '../places.ts';
import type { Shape } from '../shape.ts';
import { derivative, derivativeSince } from './forces.ts';

const k1 = new Float64Array(INTEGRATED);
const k2 = new Float64Array(INTEGRATED);
const k3 = new Float64Array(INTEGRATED);
const k4 = new Float64Array(INTEGRATED);
const trial = new Float64Array(INTEGRATED);

/**
 * One step of the classical fourth-order Runge-Kutta method on the first twelve numbers of `y`, in place.
 * `seen` is left as the last stage saw it, which differs from the new state's by the fourth order of the step.
 */
export const integrate = (
  shape: Shape,
  now: Float64Array,
  y: Float64Array,
  dtS: number,
  seen: Float64Array,
): void => {
  const half = dtS / 2;
  derivative(shape, now, y, k1, seen);
  for (let i = 0; i < INTEGRATED; i += 1) trial[i] = (y[i] as number) + half * (k1[i] as number);
  derivativeSince(shape, now, trial, k2, seen);
  for (let i = 0; i < INTEGRATED; i += 1) trial[i] = (y[i] as number) + half * (k2[i] as number);
  derivativeSince(shape, now, trial, k3, seen);
  for (let i = 0; i < INTEGRATED; i += 1) trial[i] = (y[i] as number) + dtS * (k3[i] as number);
  derivativeSince(shape, now, trial, k4, seen);
  const sixth = dtS / 6;
  for (let i = 0; i < INTEGRATED; i += 1)
    y[i] =
      (y[i] as number) +
      sixth * ((k1[i] as number) + 2 * ((k2[i] as number) + (k3[i] as number)) + (k4[i] as number));
};
