import { STEP_HZ } from '../simulation/scenario.ts';

/** The pilot looks and decides this often. */
const TICK_HZ = 20;
export const TICK_S = 1 / TICK_HZ;
export const STEPS_A_TICK = STEP_HZ / TICK_HZ;
/** Looks between seeing and acting: 0.2 s. */
export const DELAY_TICKS = 4;
/** What passes between a decision and the wings moving: the reaction and the stick. */
export const SLOW_HANDS_S = 0.4;
