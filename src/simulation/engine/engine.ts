import { RHO0_KGPM3 } from '../../atmosphere/isa.ts';

/** Gagg and Ferrar: share of sea-level power left at a density (Gudmundsson 2014, eq. 7-16). */
export const engineShare = (densityKgpm3: number): number => {
  const sigma = densityKgpm3 / RHO0_KGPM3;
  const share = sigma - (1 - sigma) / 7.55;
  return share > 0 ? share : 0;
};

/** Of the air outside, at full and at closed throttle (estimates); a standing engine draws nothing. */
const OPEN_SHARE = 0.97;
const CLOSED_SHARE = 0.34; // estimate, as above
const DRAWS_FROM_REVPS = 10; // estimate: as it comes to life

/** Manifold pressure by throttle; power goes with it at a held rpm. */
export const manifoldPa = (staticPa: number, throttle: number, revps: number): number => {
  const drawn = CLOSED_SHARE + throttle * (OPEN_SHARE - CLOSED_SHARE);
  const draws = revps < DRAWS_FROM_REVPS ? revps / DRAWS_FROM_REVPS : 1;
  return staticPa * (1 + draws * (drawn - 1));
};
