/**
 * Figures of others, as data: what truth tests hold the program to. How sure a figure is stands beside it:
 *
 * - VERIFIED: the figure was read in a copy of the named document.
 * - QUOTED: read in a text that quotes the document.
 * - RECOMPUTED: worked out by hand from the formula and constants that the source states.
 * - MEMORY: recalled, not seen. Its last two columns are a band, and its name says so where it is used.
 *
 * Nothing of our own choosing stands here: an invented aeroplane, a design target, a common practice belong to the
 * test that asks for them.
 */
export type Certainty = 'VERIFIED' | 'QUOTED' | 'RECOMPUTED' | 'MEMORY';

type Row = readonly (number | string | null)[];

export interface Reference<R extends readonly Row[] = readonly Row[]> {
  readonly what: string;
  /** Document, edition where it was noted, and chapter, page or section. */
  readonly source: string;
  readonly certainty: Certainty;
  /** One for each column: a unit, or what a word stands for. */
  readonly columns: readonly string[];
  readonly rows: R;
}

export const reference = <const R extends readonly Row[]>(it: Reference<R>): Reference<R> => it;
