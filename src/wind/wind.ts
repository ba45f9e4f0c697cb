/** The wind of a day as the model uses it, SI, true directions. */
import { TERRAIN } from './terrain.ts';

export const TURBULENCE_LEVELS = ['none', 'light', 'moderate'] as const;
export type TurbulenceLevel = (typeof TURBULENCE_LEVELS)[number];

/** A wind that is known at a height as well, instead of following from the ground's roughness. */
export interface WindAbove {
  /** Above 10 m. */
  readonly heightM: number;
  /** What the profile lacks there. */
  readonly addMps: number;
  /** From the direction at 10 m, clockwise positive. */
  readonly turnRad: number;
}

export interface Wind {
  /** Where the wind at 10 m comes from, true. */
  readonly fromRadT: number;
  /** Mean at 10 m. */
  readonly speedMps: number;
  /** Reported gust at 10 m, above the mean, or null. */
  readonly gustMps: number | null;
  /** Roughness length z0 of the ground, .0002 (sea) to 1 (town). */
  readonly roughnessM: number;
  /** Above this the mean wind no longer changes. */
  readonly gradientHeightM: number;
  /** Turn of the mean wind from 10 m to gradient height, clockwise positive. */
  readonly veerRad: number;
  readonly turbulence: TurbulenceLevel;
  readonly above: WindAbove | null;
}

/** Still air over open ground. */
export const CALM: Wind = {
  fromRadT: 0,
  speedMps: 0,
  gustMps: null,
  ...TERRAIN.open,
  veerRad: 0,
  turbulence: 'none',
  above: null,
};
