import { STEP_S } from '../../simulation/scenario.ts';

/** The lesson looks ten times a second; only the wheels are watched at every step. */
export const LOOK_STEPS = 6; // our choice: ten looks a second
export const LOOK_S = LOOK_STEPS * STEP_S;
