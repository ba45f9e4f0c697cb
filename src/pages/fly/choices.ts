import { AERODROMES, AEROPLANES, DEMO } from '../../catalogue.ts';

/** The one with this id, or the demo's, or the first. */
export const chosen = <T extends { readonly id: string }>(all: readonly T[], id: string): T =>
  all.find((each) => each.id === id) ??
  all.find((each) => each.id === DEMO.aeroplane || each.id === DEMO.aerodrome) ??
  (all[0] as T);

export { AERODROMES, AEROPLANES };
