import { RHO0_KGPM3 } from '../atmosphere/isa.ts';

/** Gagg and Ferrar: share of sea-level power left at a density (Gudmundsson 2014, eq. 7-16). */
export const engineShare = (densityKgpm3: number): number => {
  const sigma = densityKgpm3 / RHO0_KGPM3;
  const share = sigma - (1 - sigma) / 7.55;
  return share > 0 ? share : 0;
};
