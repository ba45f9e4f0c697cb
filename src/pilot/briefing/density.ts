/** Derived: half the standard density of sea level (ISA: 1.225 kg/m3): pascals for a metre a second squared, indicated. */
export const HALF_DENSITY_KGPM3 = 0.6125;
