/**
 * The table behind README's "how far to trust it". Truth tests tell it each comparison with an outside figure;
 * with LAPWING_TRUST=1 every test file prints its rows as Markdown when it ends. It writes no file.
 */
import { afterAll } from 'vitest';

interface Row {
  readonly quantity: string;
  readonly source: string;
  readonly unit: string;
  readonly errors: number[];
}

const rows = new Map<string, Row>();

/** One comparison: what came out, what the source says, in `unit` ('%' compares relatively). */
export const trust = (
  quantity: string,
  source: string,
  found: number,
  expected: number,
  unit: string,
): void => {
  const key = `${quantity}|${source}|${unit}`;
  const row = rows.get(key) ?? { quantity, source, unit, errors: [] };
  row.errors.push(unit === '%' ? (100 * (found - expected)) / expected : found - expected);
  rows.set(key, row);
};

const figure = (x: number): string =>
  x === 0 ? '0' : Math.abs(x) < 1e-3 ? x.toExponential(1) : String(Number(x.toPrecision(2)));

/** `| quantity | source | n | mean | largest |`, errors in the row's unit. */
export const trustRows = (): string[] =>
  [...rows.values()].map(({ quantity, source, unit, errors }) => {
    const mean = errors.reduce((sum, e) => sum + e, 0) / errors.length;
    const largest = errors.reduce((most, e) => (Math.abs(e) > Math.abs(most) ? e : most), 0);
    return `| ${quantity} | ${source} | ${errors.length} | ${figure(mean)} ${unit} | ${figure(largest)} ${unit} |`;
  });

afterAll(() => {
  if (process.env.LAPWING_TRUST === '1' && rows.size > 0) process.stdout.write(`${trustRows().join('\n')}\n`);
});
