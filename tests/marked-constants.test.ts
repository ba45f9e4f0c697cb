// README: "Where a number is common practice without a source, an estimate, or from memory, the place that uses it says
// so." Here for the rooms whose numbers are judgements: every numeric constant of a module, and every number in a table
// of them, says where it is from, on its own line or in the comment directly above it.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSources, strip } from './support/source.ts';

const ROOMS = /^src\/(?:pilot|lesson|wind|simulation)\//;

/** A document is named with a number of its own: a section, a page, a year. */
const DOCUMENT =
  /\b(?:FAA|ICAO|EASA|AFH|ACS|AIM|CAA|CAP|CFR|FCL|MIL|NACA|NASA|WMO|ISA)\b[^*]{0,14}?(?:\d|[IVX]+\.)|South African|New Zealand|\btextbook\b/;
const WORDS =
  /\bcommon practice\b|\bestimates?\b|\bfrom memory\b|\btuned\b|\b(?:derived|definition|our choice): [\w ]{4,}/i;
const isMarked = (comment: string): boolean => WORDS.test(comment) || DOCUMENT.test(comment);

/** A line and those around it that stand no further out: the fields of one object, or one element of a list. */
const groupOf = (lines: readonly string[], at: number): string => {
  const depth = (i: number): number => lines[i]?.search(/\S/) ?? -1;
  const inside = (i: number): boolean => depth(i) >= depth(at) && depth(i) > 0 && !/^\s*\{ /.test(lines[i]!);
  let [from, to] = [at, at];
  while (inside(from - 1) && !/^\s*\w+: \w+\(/.test(lines[at]!)) from -= 1;
  while (inside(to + 1) && !/^\s*\w+: \w+\(/.test(lines[at]!)) to += 1;
  return lines.slice(from, to + 1).join('\n');
};

interface Unmarked {
  readonly line: number;
  readonly text: string;
}

/** The comment lines directly above a line, and what stands behind // on it. */
const commentOf = (lines: readonly string[], at: number): string => {
  let above = '';
  for (let i = at - 1; i >= 0 && /^\s*(?:\/\/|\/\*|\*)/.test(lines[i]!); i -= 1)
    above = `${lines[i]} ${above}`;
  return `${above} ${lines[at]!.split('//').slice(1).join('//')}`;
};

const SCALAR = /^(?:export )?const \w+(?:: [^=]+)? = (?:-?[\d.]|\w+\(-?[\d.])/;
const TABLE = /^(?:export )?const \w+(?:: .+)? = (?:Object\.freeze\()?[[{]/;
/** A field or an element that is a number, written out or turned out of a unit. */
const NUMBER = /(?<=(?:^|[:[,(])\s*(?:\w+\()?)-?\d[\d._]*(?:e-?\d+)?\b/g;
/** Examples that a rule is tried with, and numbers that carry their source or its certainty with them as data. */
const EXAMPLE = /\b(?:good|bad): -?[\d.]+/g;
const TOLD = /\bsource\b|\bpractice\(|'(?:seen|quoted|practice|memory)'/;
/** None, one and minus one are no judgement. */
const isArithmetic = (text: string): boolean => [0, 1, -1].includes(Number(text));

const unmarkedIn = (source: string): { readonly unmarked: readonly Unmarked[]; readonly seen: number } => {
  const lines = source.split('\n');
  // The same lines without comments and strings
  const bare = strip(source, false).split('\n');
  const unmarked: Unmarked[] = [];
  let seen = 0;
  const look = (at: number, numbers: number, marked: boolean): void => {
    seen += numbers;
    if (numbers > 0 && !marked && !isMarked(commentOf(lines, at)))
      unmarked.push({ line: at + 1, text: lines[at]!.trim() });
  };
  bare.forEach((line, at) => {
    if (SCALAR.test(line)) look(at, 1, false);
    if (!TABLE.test(line)) return;
    const whole = isMarked(commentOf(lines, at));
    // To the line that closes it: the first that is not indented
    let end = at;
    if (/[[{(,]\s*$/.test(line))
      do end += 1;
      while (end < bare.length && !/^\S/.test(bare[end]!));
    for (let i = at; i <= end; i += 1) {
      const code = i === at ? line.replace(/^.*? = /, '') : (bare[i] ?? '');
      // What a function in the table does is code
      if (/=>|\breturn\b|\bif \(/.test(code) || /=>\s*$/.test(bare[i - 1] ?? '')) continue;
      const numbers = [...code.replace(EXAMPLE, '').matchAll(NUMBER)].filter(([text]) => !isArithmetic(text));
      look(i, numbers.length, whole || TOLD.test(groupOf(lines, i)));
    }
  });
  return { unmarked, seen };
};

describe('a numeric constant', () => {
  const files = readSources('.', 'src').filter(({ path }) => ROOMS.test(path));
  const textOf = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
  const found = files.map(({ path }) => ({ path, ...unmarkedIn(textOf(path)) }));

  it('of pilot, lesson, wind and simulation says where its number is from', () => {
    // As many as there were when this was written, and some more or less
    expect(found.reduce((sum, { seen }) => sum + seen, 0)).toBeGreaterThan(500);
    const sentences = found.flatMap(({ path, unmarked }) =>
      unmarked.map(({ line, text }) => `${path}:${line}: "${text}" must say where its number is from`),
    );
    expect(sentences).toEqual([]);
  });

  it('that says nothing is found, on its own and in a table', () => {
    const wrong = [
      'const A = 3;',
      'const B = mFromFt(200); // low',
      'const C = {',
      '  lowM: 5,',
      '};',
      'const D = [7, 0];',
    ];
    expect(unmarkedIn(wrong.join('\n')).unmarked.map(({ line }) => line)).toEqual([1, 2, 4, 6]);
    const right = [
      '// tuned',
      'const A = 3;',
      'const B = 4; // our choice: low down',
      'const C = {',
      '  lowM: 5, // estimate',
      '};',
    ];
    expect(unmarkedIn(right.join('\n')).unmarked).toEqual([]);
  });

  it('is not marked by a word without what it stands for', () => {
    expect(isMarked('our choice')).toBe(false);
    expect(isMarked('derived')).toBe(false);
    expect(isMarked('ICAO')).toBe(false);
    expect(isMarked('our choice: above any round-out')).toBe(true);
  });
});
