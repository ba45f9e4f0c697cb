import { fetchPart } from '../../parts/fetch-part.ts';

/**
 * The model pilot, fetched when it is wanted: who flies by hand and alone needs none. Once a flight stands it is
 * fetched in any case, so that nothing is asked for later.
 */
type Pilots = typeof import('../../../flight/model-pilot.ts');

let pilots: Pilots | null = null;

export const loadPilots = async (): Promise<Pilots> => {
  pilots ??= await fetchPart('flight/model-pilot.ts', () => import('../../../flight/model-pilot.ts'));
  return pilots;
};

/** Null until they are there. */
export const pilotsNow = (): Pilots | null => pilots;
