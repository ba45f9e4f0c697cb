import { STEP_HZ } from '../simulation/scenario.ts';

/** The pilot looks and decides this often. */
const TICK_HZ = 20; // our choice: every third step
export const TICK_S = 1 / TICK_HZ; // derived: of TICK_HZ
export const STEPS_A_TICK = STEP_HZ / TICK_HZ;
/** Looks between seeing and acting: 0.2 s. */
export const DELAY_TICKS = 4; // estimate: simple reaction
/** What passes between a decision and the wings moving: the reaction and the stick. */
export const SLOW_HANDS_S = 0.4; // estimate
