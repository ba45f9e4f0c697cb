/**
 * The two tables behind README's "How far to trust it". A truth test tells them each comparison it makes: `trust` with
 * a figure of others out of tests/reference or a library of others, `meant` with what we asked of it ourselves. When a
 * file of tests ends, its rows must stand in README as measured; with LAPWING_TRUST=1 they are handed to
 * trust-reporter.ts instead, which prints both tables.
 */
import { readFileSync } from 'node:fs';
import { afterAll } from 'vitest';
import { REFERENCES } from '../reference/all.ts';
import { LIBRARIES } from '../reference/libraries.ts';
import type { Reference } from '../reference/reference.ts';
import { type TrustTable, tableIn } from './trust-readme.ts';

interface Row {
  readonly table: TrustTable;
  /** The cells before the count. */
  readonly cells: readonly string[];
  readonly unit: string;
  readonly errors: number[];
}

const rows = new Map<string, Row>();

const note = (table: TrustTable, names: readonly string[], error: number, unit: string): void => {
  const [quantity = '', ...others] = names;
  const cells = [quantity.charAt(0).toUpperCase() + quantity.slice(1), ...others];
  const key = cells.join('|');
  const row = rows.get(key) ?? { table, cells, unit, errors: [] };
  row.errors.push(error);
  rows.set(key, row);
};

/** In `unit`; '%' compares relatively. */
const errorOf = (found: number, expected: number, unit: string): number =>
  unit === '%' ? (100 * (found - expected)) / expected : found - expected;

const sureOf = (source: string): string => {
  if (Object.values<string>(LIBRARIES).includes(source)) return 'LIBRARY';
  const known = REFERENCES.find(([, reference]) => reference.source === source);
  if (known === undefined)
    throw new Error(`trust: no reference in tests/reference has the source "${source}"`);
  return known[1].certainty;
};

/** One comparison with somebody else's figure. */
export const trust = (
  quantity: string,
  source: Pick<Reference, 'source' | 'certainty'> | string,
  found: number,
  expected: number,
  unit: string,
): void => {
  const [name, sure] =
    typeof source === 'string' ? [source, sureOf(source)] : [source.source, source.certainty];
  note('others', [quantity, name, sure], errorOf(found, expected, unit), unit);
};

/** One comparison with what we meant: a closed form of our own numbers, a design target, our own linearisation. */
export const meant = (quantity: string, by: string, found: number, expected: number, unit: string): void =>
  note('meant', [quantity, by], errorOf(found, expected, unit), unit);

const figure = (x: number): string => {
  // Below this it is the last bit of the arithmetic that speaks
  if (Math.abs(x) < 1e-9) return '0';
  return Math.abs(x) < 1e-3 ? x.toExponential(1) : String(Number(x.toPrecision(2)));
};

const lineOf = ({ cells, unit, errors }: Row): string => {
  const mean = errors.reduce((sum, e) => sum + e, 0) / errors.length;
  const largest = errors.reduce((most, e) => (Math.abs(e) > Math.abs(most) ? e : most), 0);
  const told = [mean, largest].map((x) => `${figure(x)} ${unit}`.trim());
  return `| ${[...cells, errors.length, ...told].join(' | ')} |`;
};

const everyTestRan = (suite: { readonly tasks?: readonly unknown[]; readonly mode?: string }): boolean =>
  suite.mode !== 'skip' && (suite.tasks ?? []).every((task) => everyTestRan(task as typeof suite));

// biome-ignore lint/correctness/noEmptyPattern: vitest reads here which fixtures a hook asks for: none
afterAll(({}, suite) => {
  const lines = [...rows.values()].map((row) => [row.table, lineOf(row)] as const);
  if (process.env.LAPWING_TRUST === '1') {
    Object.assign(suite.meta, { trust: lines });
    return;
  }
  if (!everyTestRan(suite)) return;
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const wrong = lines.filter(([table, line]) => !tableIn(readme, table).includes(line));
  if (wrong.length > 0)
    throw new Error(
      `README.md, "How far to trust it", does not have these rows as measured; LAPWING_TRUST=1 npx vitest run ` +
        `tests/truth prints its tables anew:\n${wrong.map(([table, line]) => `${table}: ${line}`).join('\n')}`,
    );
});
