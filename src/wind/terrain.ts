/**
 * Ground by name. Roughness lengths: Davenport classes as WMO-No. 8 (CIMO guide) lists them. Gradient
 * heights rise with roughness; the figures are common practice (round, near Davenport's power-law heights).
 */
export interface Terrain {
  readonly roughnessM: number;
  readonly gradientHeightM: number;
}

/** Roughness as WMO-No. 8 has it, gradient heights common practice. */
export const TERRAIN = {
  /** Runway area of airports, short grass. */
  open: { roughnessM: 0.03, gradientHeightM: 300 },
  /** Low crops, a few hedges. */
  'roughly-open': { roughnessM: 0.1, gradientHeightM: 350 },
  /** High crops, scattered trees and houses. */
  rough: { roughnessM: 0.25, gradientHeightM: 400 },
} as const satisfies Readonly<Record<string, Terrain>>;
