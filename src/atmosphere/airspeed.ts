/**
 * Indicated and true airspeed. The instrument is taken as faultless and the air as incompressible: what is
 * indicated is equivalent airspeed, TAS sqrt(density / standard density). Leaving compressibility out costs
 * 0.22 kt at 120 kt and 10,000 ft (tests/reference/atmosphere.ts).
 */
import { RHO0_KGPM3 } from './isa.ts';

/** Indicated airspeed from true. */
export const iasFromTas = (tasMps: number, densityKgpm3: number): number =>
  tasMps * Math.sqrt(densityKgpm3 / RHO0_KGPM3);

/** True airspeed from indicated. */
export const tasFromIas = (iasMps: number, densityKgpm3: number): number =>
  iasMps * Math.sqrt(RHO0_KGPM3 / densityKgpm3);
