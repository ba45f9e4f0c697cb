import { INTEGRATED } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';
import { derivative, derivativeSince } from './forces.ts';

const k1 = new Float64Array(INTEGRATED);
const k2 = new Float64Array(INTEGRATED);
const k3 = new Float64Array(INTEGRATED);
const k4 = new Float64Array(INTEGRATED);
const trial = new Float64Array(INTEGRATED);

/** Lays `trial`: from `y` for so long at the rates `k`. Written out: a loop over twelve costs more than its sums. */
const reach = (y: Float64Array, dtS: number, k: Float64Array): void => {
  trial[AT.east] = y[AT.east]! + dtS * k[AT.east]!;
  trial[AT.north] = y[AT.north]! + dtS * k[AT.north]!;
  trial[AT.up] = y[AT.up]! + dtS * k[AT.up]!;
  trial[AT.velocityEast] = y[AT.velocityEast]! + dtS * k[AT.velocityEast]!;
  trial[AT.velocityNorth] = y[AT.velocityNorth]! + dtS * k[AT.velocityNorth]!;
  trial[AT.velocityUp] = y[AT.velocityUp]! + dtS * k[AT.velocityUp]!;
  trial[AT.pitch] = y[AT.pitch]! + dtS * k[AT.pitch]!;
  trial[AT.bank] = y[AT.bank]! + dtS * k[AT.bank]!;
  trial[AT.heading] = y[AT.heading]! + dtS * k[AT.heading]!;
  trial[AT.pitchRate] = y[AT.pitchRate]! + dtS * k[AT.pitchRate]!;
  trial[AT.rollRate] = y[AT.rollRate]! + dtS * k[AT.rollRate]!;
  trial[AT.revps] = y[AT.revps]! + dtS * k[AT.revps]!;
};

/** One of the twelve after the step. */
const advanced = (y: Float64Array, at: number, sixth: number): void => {
  y[at] = y[at]! + sixth * (k1[at]! + 2 * (k2[at]! + k3[at]!) + k4[at]!);
};

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
  reach(y, half, k1);
  derivativeSince(shape, now, trial, k2, seen);
  reach(y, half, k2);
  derivativeSince(shape, now, trial, k3, seen);
  reach(y, dtS, k3);
  derivativeSince(shape, now, trial, k4, seen);
  const sixth = dtS / 6;
  advanced(y, AT.east, sixth);
  advanced(y, AT.north, sixth);
  advanced(y, AT.up, sixth);
  advanced(y, AT.velocityEast, sixth);
  advanced(y, AT.velocityNorth, sixth);
  advanced(y, AT.velocityUp, sixth);
  advanced(y, AT.pitch, sixth);
  advanced(y, AT.bank, sixth);
  advanced(y, AT.heading, sixth);
  advanced(y, AT.pitchRate, sixth);
  advanced(y, AT.rollRate, sixth);
  advanced(y, AT.revps, sixth);
};
