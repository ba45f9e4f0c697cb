import { parseAerodrome } from '../../aerodrome/parse.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import { parseAeroplane } from '../../aeroplane/parse.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';

/** What can be flown with and where: the files of the assets, parsed and checked at first use. */
const aeroplaneFiles = import.meta.glob('../../../assets/aeroplanes/*.json', {
  eager: true,
  import: 'default',
});
const aerodromeFiles = import.meta.glob('../../../assets/aerodromes/*.json', {
  eager: true,
  import: 'default',
});

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

export const aeroplanes = (): readonly Aeroplane[] =>
  Object.entries(aeroplaneFiles).map(([path, json]) => parseAeroplane(json, nameOf(path)));
export const aerodromes = (): readonly Aerodrome[] =>
  Object.entries(aerodromeFiles).map(([path, json]) => parseAerodrome(json, nameOf(path)));

/** The one with this id, or the first. */
export const named = <T extends { readonly id: string }>(all: readonly T[], id: string): T =>
  all.find((each) => each.id === id) ?? (all[0] as T);
