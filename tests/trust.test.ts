// What README says of trust: that both tables are whole, and that the figures of others behind the first are told with
// source and certainty. That each row is as measured is checked where it is measured (support/trust-table.ts).
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { REFERENCES } from './reference/all.ts';
import { LIBRARIES } from './reference/libraries.ts';
import { tableIn } from './support/trust-readme.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const filesIn = (folder: string): readonly (readonly [string, string])[] =>
  readdirSync(new URL(folder, import.meta.url)).map((name) => [name, read(`${folder}${name}`)] as const);

const TRUTH = filesIn('./truth/');
const README = read('../README.md');

const cellsOf = (line: string): readonly string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());
const asTold = (quantity: string): string => quantity.charAt(0).toUpperCase() + quantity.slice(1);
const called = (by: 'trust' | 'meant'): readonly string[] => {
  const call = new RegExp(`\\b${by}\\(\\s*'([^']+)'`, 'g');
  return TRUTH.flatMap(([, text]) => [...text.matchAll(call)].map(([, quantity]) => asTold(quantity!)));
};

describe.each([
  ['others', 'trust'],
  ['meant', 'meant'],
] as const)("README's table of what is %s", (table, by) => {
  const told = tableIn(README, table).map((line) => cellsOf(line)[0]!);

  it('names each quantity that a truth test compares, once, and no other', () => {
    expect(told.length).toBeGreaterThan(20);
    expect([...told].sort()).toEqual([...new Set(called(by))].sort());
  });
});

describe("README's table of what is held to others", () => {
  it('rests on a figure that was read or worked out, never on memory alone, or on a library', () => {
    const sources = new Map<string, string>(
      REFERENCES.map(([, { source, certainty }]) => [source, certainty]),
    );
    for (const name of Object.values(LIBRARIES)) sources.set(name, 'LIBRARY');
    for (const line of tableIn(README, 'others')) {
      const [quantity, source, sure] = cellsOf(line);
      expect(sources.has(source!), `${quantity}: ${source} stands in tests/reference`).toBe(true);
      expect(['VERIFIED', 'QUOTED', 'RECOMPUTED', 'LIBRARY'], quantity).toContain(sure);
    }
  });
});

describe.each(REFERENCES)('the reference %s', (name, { what, source, certainty, columns, rows }) => {
  it('says what it is, its source and how sure it is, and has a name for every column', () => {
    expect(what.length).toBeGreaterThan(10);
    expect(source.length).toBeGreaterThan(5);
    expect(['VERIFIED', 'QUOTED', 'RECOMPUTED', 'MEMORY']).toContain(certainty);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row).toHaveLength(columns.length);
      for (const cell of row) if (typeof cell === 'number') expect(cell).toSatisfy(Number.isFinite);
    }
  });

  it('from memory says so in its name and is a band, no narrower than a twentieth of itself', () => {
    expect(name.endsWith('_FROM_MEMORY')).toBe(certainty === 'MEMORY');
    if (certainty !== 'MEMORY') return;
    expect(columns.slice(-2)).toEqual(['lowest', 'highest']);
    for (const row of rows) {
      const [low, high] = row.slice(-2) as [number, number];
      expect(high - low).toBeGreaterThanOrEqual(0.05 * high);
    }
  });

  it('is used by a truth test', () => {
    const users = TRUTH.filter(([, text]) => new RegExp(`\\b${name}\\b`).test(text)).map(([file]) => file);
    // Turbulence's figures are formulas: its test names the document
    const expected = name === 'TURBULENCE' ? 0 : 1;
    expect(users.length).toBeGreaterThanOrEqual(expected);
  });
});

describe('the truth tests', () => {
  it.each(TRUTH)(
    '%s keep published figures in tests/reference, and call what is from memory so',
    (_, text) => {
      // Names of the project's own notes are no source for a reader
      expect(text).not.toMatch(/flight-figures|circuit-training|model\.md|lesson\.md/);
      if (/_FROM_MEMORY/.test(text)) expect(text).toMatch(/from memory/);
    },
  );
});

describe('the Airplane Flying Handbook', () => {
  const below = (folder: string): readonly string[] =>
    readdirSync(new URL(folder, import.meta.url), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(?:tsx?|json|md)$/.test(entry.name))
      .map((entry) => `${entry.parentPath}/${entry.name}`)
      // What was written by earlier versions keeps what they wrote
      .filter((path) => !path.includes('/fixtures/') && !path.endsWith('trust.test.ts'));
  const files = [...below('../src/'), ...below('../assets/'), ...below('./')];

  it('is cited as edition 3C, by chapter, or by chapter and page', () => {
    const loose = files.flatMap((path) => {
      const text = readFileSync(path, 'utf8').replaceAll('\\', '');
      const cited =
        text.match(/AFH-|Airplane Flying Handbook|FAA-H-8083-3(?!C (?:ch\. \d|p\. \d+-\d)).{0,12}/g) ?? [];
      return cited.map((words) => `${path}: ${words}`);
    });
    expect(loose).toEqual([]);
  });
});
