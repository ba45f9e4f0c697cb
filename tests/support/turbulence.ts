/** Turbulence at a height, asked of what the step asks, in the wind wanted at 20 ft. */
import { mFromFt, mpsFromKt } from '../../src/units/conversions.ts';
import { bracketRoot, heldFt, horizontalLengthFt, verticalLengthFt } from '../../src/wind/dryden.ts';
import { logLawFactor } from '../../src/wind/profile.ts';
import { HORIZONTAL, layStrength, unblockedShare, VERTICAL } from '../../src/wind/strength.ts';
import { CALM, type TurbulenceLevel, type Wind } from '../../src/wind/wind.ts';

/** MIL-F-8785C: the wind at 20 ft that belongs to a level. */
export const LEVEL_W20_KT = { light: 15, moderate: 30 } as const;

/** A wind that has this speed at 20 ft. */
export const windAt20Ft = (
  turbulence: TurbulenceLevel,
  w20Kt: number,
  roughnessM = CALM.roughnessM,
): Wind => ({
  ...CALM,
  roughnessM,
  turbulence,
  speedMps: mpsFromKt(w20Kt) / logLawFactor(roughnessM, mFromFt(20)),
});

/** Standard deviations at a point, m/s. */
export const strengthAt = (wind: Wind, heightM: number): { horizontal: number; vertical: number } => {
  const out = new Float64Array(2);
  const heightFt = heldFt(heightM);
  layStrength(wind, bracketRoot(heightFt), unblockedShare(heightFt), out);
  return { horizontal: out[HORIZONTAL]!, vertical: out[VERTICAL]! };
};

export const horizontalLengthM = (heightM: number): number =>
  mFromFt(horizontalLengthFt(heldFt(heightM), bracketRoot(heldFt(heightM))));

export const verticalLengthM = (heightM: number): number => mFromFt(verticalLengthFt(heldFt(heightM)));
