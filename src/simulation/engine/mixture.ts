import { isaDensityKgpm3, RHO0_KGPM3 } from '../../atmosphere/isa.ts';
import { mFromFt } from '../../units/conversions.ts';

/**
 * Richness of the mixture, 1 where fuel and air burn up. Metering by volume grows richer in thin air, with the root
 * of density (textbook, from memory). The figures are estimates: fully rich at sea level, best power a little leaner.
 */
const FULL_RICHNESS = 1.25;
const BEST_RICHNESS = 1.15; // estimate, as above
const RICH_LOSS = 0.7; // estimate, as above
const LEAN_LOSS = 3.2; // estimate, as above

const burnt = (richness: number): number => {
  const off = richness - BEST_RICHNESS;
  const share = 1 - (off > 0 ? RICH_LOSS : LEAN_LOSS) * off * off;
  return share > 0 ? share : 0;
};
const FULLY_RICH = burnt(FULL_RICHNESS);

/** Share of power with the lever at 0 (cut-off) to 1 (fully rich); 1 fully rich at sea level, 0 too lean to fire. */
export const mixtureShare = (lever: number, densityKgpm3: number): number =>
  burnt((FULL_RICHNESS * lever) / Math.sqrt(densityKgpm3 / RHO0_KGPM3)) / FULLY_RICH;

/** Leaned for power from this density altitude up (common practice: 3,000 ft). */
const LEAN_FROM_KGPM3 = isaDensityKgpm3(mFromFt(3000));

/** Where the lever stands in good hands: fully rich low down, leaned for best power in thin air. */
export const leanedMixture = (densityKgpm3: number): number =>
  densityKgpm3 >= LEAN_FROM_KGPM3
    ? 1
    : Math.min(1, (BEST_RICHNESS / FULL_RICHNESS) * Math.sqrt(densityKgpm3 / RHO0_KGPM3));
