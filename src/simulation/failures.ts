import { temperatureK } from '../atmosphere/air.ts';
import { R_JPKGK } from '../atmosphere/isa.ts';
import { mFromFt } from '../units/conversions.ts';
import type { Model } from './model.ts';
import { SEEN } from './places.ts';
import { type Failure, STEP_HZ } from './scenario.ts';
import { AT, type State } from './state.ts';

const seenNow = (state: State, place: number): number => state[AT.seen + place] as number;

/** Static pressure where the aeroplane is, from the density it was last given. */
export const staticPa = (model: Model, state: State): number =>
  (state[AT.density] as number) *
  R_JPKGK *
  temperatureK(model.air, model.runway.thresholdElevationM + (state[AT.up] as number));

/** What each failure does to the state, again and again from its time on. */
const FAILURES: Readonly<Record<Failure['what'], (model: Model, state: State, amount: number) => void>> = {
  'engine-stop': (_, state) => {
    state[AT.engineDead] = 1;
  },
  'partial-power': (_, state, amount) => {
    state[AT.powerShare] = amount;
  },
  'flap-stuck': (_, state) => {
    state[AT.flapStuck] = 1;
  },
  'trim-stuck': (_, state) => {
    state[AT.trimStuck] = 1;
  },
  'fuel-pump': (_, state) => {
    state[AT.pumpFailed] = 1;
  },
  // The pitot head and its drain are blocked: the pressure of this moment is trapped
  'airspeed-blocked': (model, state) => {
    if (state[AT.airspeedBlocked] === 1) return;
    state[AT.airspeedBlocked] = 1;
    state[AT.trapped] = staticPa(model, state) + seenNow(state, SEEN.dynamicPressure);
  },
  brakes: (_, state) => {
    state[AT.brakesFailed] = 1;
  },
  radio: (_, state) => {
    state[AT.radioFailed] = 1;
  },
};

/** Events of the scenario whose time has come, and height where one is given; what they do, they do for good. */
export const fail = (model: Model, state: State): void => {
  const failures = model.scenario.failures;
  if (failures.length === 0) return;
  const timeS = (state[AT.step] as number) / STEP_HZ;
  for (const { what, atS, amount, aboveFt } of failures) {
    if (timeS < atS) continue;
    if (aboveFt !== undefined && seenNow(state, SEEN.wheelHeight) < mFromFt(aboveFt)) continue;
    FAILURES[what](model, state, amount);
  }
};
