import type { Aerodrome } from '../../../aerodrome/schema.ts';
import type { Aeroplane } from '../../../aeroplane/schema.ts';
import { AERODROMES, AEROPLANES, DEMO } from '../../../catalogue.ts';
import { ownAeroplanes, ownPlaces } from '../../own/own-places.ts';

/** The one with this id, or the demo's, or the first. */
export const chosen = <T extends { readonly id: string }>(all: readonly T[], id: string): T =>
  all.find((each) => each.id === id) ??
  all.find((each) => each.id === DEMO.aeroplane || each.id === DEMO.aerodrome) ??
  (all[0] as T);

/** The catalogue's, then what the user has entered. */
export const everyAerodrome = (): readonly Aerodrome[] => [...AERODROMES, ...ownPlaces().aerodromes];
export const everyAeroplane = (): readonly Aeroplane[] => [...AEROPLANES, ...ownAeroplanes()];
