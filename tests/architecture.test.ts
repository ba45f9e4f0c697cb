// The import table of the house and what the pure folders must not touch. A rule that must bend is changed here.
import { describe, expect, it } from 'vitest';
import {
  circlesOf,
  idleExports,
  importedPath,
  importsOf,
  lineAt,
  readSources,
  type SourceFile,
  sourceFile,
  takenBy,
} from './support/source.ts';

const PHYSICS = ['atmosphere', 'wind', 'aeroplane', 'aerodrome'];
/** Folders that run anywhere: no clock, no luck, no screen, no files. */
const PURE = [
  'units',
  'maths',
  ...PHYSICS,
  'simulation',
  'circuit',
  'pilot',
  'lesson',
  'session',
  'study',
  'formats',
  'flight',
];

/** Room of src -> rooms it may import, besides itself, units and maths. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  units: [],
  maths: [],
  atmosphere: [],
  wind: [],
  aeroplane: [],
  aerodrome: [],
  simulation: PHYSICS,
  circuit: ['simulation', ...PHYSICS],
  pilot: ['simulation', 'circuit', 'aeroplane', 'aerodrome'],
  lesson: ['simulation', 'circuit', 'aeroplane', 'aerodrome'],
  session: ['simulation'],
  study: ['session', 'pilot', 'lesson', 'circuit', 'simulation', 'aeroplane', 'aerodrome'],
  formats: ['session', 'lesson', 'circuit', 'simulation', 'aeroplane', 'aerodrome'],
  flight: ['session', 'pilot', 'lesson', 'circuit', 'formats', 'simulation', 'aeroplane', 'aerodrome'],
  views: ['simulation', 'circuit', 'lesson', 'aeroplane', 'aerodrome'],
  input: ['simulation'],
  sound: ['simulation', 'lesson'],
  workers: [...PURE, 'storage'],
  storage: ['session', 'lesson', 'formats'],
  pages: [
    ...PURE,
    'views',
    'input',
    'sound',
    'workers',
    'storage',
    'catalogue.ts',
    'exercises.ts',
    'judged-exercises.ts',
    'assets',
  ],
  'main.ts': [...PURE, 'views', 'input', 'sound', 'workers', 'storage', 'pages', 'catalogue.ts', 'assets'],
  'catalogue.ts': ['aeroplane', 'aerodrome', 'exercises.ts', 'simulation', 'assets'],
  'exercises.ts': ['lesson', 'simulation', 'assets'],
  'judged-exercises.ts': ['lesson', 'assets'],
  headless: [...PURE, 'catalogue.ts', 'exercises.ts'],
};

/** Package -> rooms that may import it. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  seedrandom: ['maths'],
  'metar-taf-parser': ['formats'],
  valibot: ['aeroplane', 'aerodrome', 'simulation', 'lesson', 'formats', 'storage', 'pages'],
  'pixi.js': ['views', 'pages'],
  react: ['pages', 'main.ts'],
  'react-dom': ['pages', 'main.ts'],
  zustand: ['pages'],
  idb: ['storage'],
  node: ['headless'],
};

const INEXACT =
  'sin cos tan asin acos atan atan2 sinh cosh tanh asinh acosh atanh exp expm1 log log2 log10 log1p pow hypot cbrt';

/** What a pure folder must not say -> what to do instead. */
const BANNED_IN_PURE: readonly (readonly [RegExp, string])[] = [
  [/\bnew Date\b|\bDate\.\w+|\bperformance\.\w+/g, 'no clock: time is the step count'],
  [/\bMath\.random\b|\bcrypto\.\w+/g, 'a seeded stream of maths/random.ts'],
  [new RegExp(`\\bMath\\.(?:${INEXACT.split(' ').join('|')})\\b`, 'g'), 'the function of maths/functions.ts'],
  [/\*\*=?/g, 'x * x, or pow of maths/functions.ts'],
  [/\bconsole\.\w+/g, 'a returned value or an error'],
  [/\btoLocale\w+|\blocaleCompare\b|\bIntl\.\w+/g, "text that does not depend on the machine's language"],
  [/\bsetTimeout\b|\bsetInterval\b|\brequestAnimationFrame\b/g, 'no clock: time is the step count'],
];

/** Sizes of units, to be had from src/units only. */
const UNIT_CONSTANTS =
  /(?<![\w.])(?:0?\.3048\d*|3\.280\d*|0?\.5144\d*|1\.943\d*|1852|9\.80\d*|9\.81|57\.29\d*|0?\.01745\d*|273\.15|Math\.PI\s*\)?\s*\/\s*180|180\s*\)?\s*\/\s*Math\.PI)(?![\w.])/g;

/** The room a file stands in: its folder below src, or its own name at the top. */
const roomOf = (path: string): string => {
  const [top, second] = path.split('/');
  return top === 'src' ? (second ?? '') : (top ?? '');
};

const packageOf = (specifier: string): string => {
  if (specifier.startsWith('node:')) return 'node';
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!;
};

function importFaults(file: SourceFile): string[] {
  const room = roomOf(file.path);
  const allowed = MAY_IMPORT[room];
  if (allowed === undefined) {
    return [`${file.path}:1: ${room} must be a room of the import table, was not in it`];
  }
  const open = new Set([room, 'units', 'maths', ...allowed]);
  if (room === 'units') open.delete('maths');
  return importsOf(file).flatMap(({ line, specifier }) => {
    const place = `${file.path}:${line}`;
    if (!specifier.startsWith('.')) {
      const rooms = PACKAGES[packageOf(specifier)];
      if (rooms?.includes(room)) return [];
      return [
        `${place}: ${room} must not import the package ${specifier}; open to ${rooms?.join(', ') ?? 'no room'}`,
      ];
    }
    const target = roomOf(importedPath(file, specifier));
    if (open.has(target)) return [];
    return [`${place}: ${room} must not import ${target} (${specifier}); may import ${[...open].join(', ')}`];
  });
}

const findings = (file: SourceFile, pattern: RegExp, say: (found: string) => string): string[] =>
  [...file.bare.matchAll(pattern)].map(
    (match) => `${file.path}:${lineAt(file.bare, match.index)}: ${say(match[0])}`,
  );

const purityFaults = (file: SourceFile): string[] =>
  PURE.includes(roomOf(file.path))
    ? BANNED_IN_PURE.flatMap(([pattern, instead]) =>
        findings(file, pattern, (found) => `found ${found} in a pure folder, expected ${instead}`),
      )
    : [];

const unitFaults = (file: SourceFile): string[] =>
  roomOf(file.path) === 'units'
    ? []
    : findings(file, UNIT_CONSTANTS, (found) => `found ${found}, expected a conversion from src/units`);

const globFaults = (file: SourceFile): string[] =>
  ['catalogue.ts', 'exercises.ts', 'judged-exercises.ts'].includes(roomOf(file.path))
    ? []
    : findings(
        file,
        /\bimport\.meta\.glob\b/g,
        (found) =>
          `found ${found}, expected it in src/catalogue.ts, src/exercises.ts and src/judged-exercises.ts only`,
      );

/** More than this many files are a folder to be sorted by subject. */
const MOST_FILES = 20;
const folderFaults = (files: readonly SourceFile[]): string[] => {
  const counts = new Map<string, number>();
  for (const { path } of files) {
    const folder = path.slice(0, path.lastIndexOf('/'));
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  return [...counts]
    .filter(([, count]) => count > MOST_FILES)
    .map(([folder, count]) => `${folder}: must hold at most ${MOST_FILES} files, holds ${count}`);
};

const TYPED_ARRAY = '(?:Float64|Float32|Int32|Uint32|Uint8)Array';
const WORK_ARRAY = new RegExp(
  `(\\w+)\\s*(?:=\\s*new ${TYPED_ARRAY}\\((?!1\\)|\\[1\\]\\))|\\??: (?:Readonly<)?(?:${TYPED_ARRAY}|State)\\b)`,
  'g',
);

/** A work array of several numbers says each place by its name: `into[BLADES.thrust]`, never `into[0]`. */
const placeFaults = (file: SourceFile): string[] => {
  if (!PURE.includes(roomOf(file.path))) return [];
  const arrays = new Set([...file.bare.matchAll(WORK_ARRAY)].map(([, name]) => name));
  return findings(file, /\b\w+\[\d+\]/g, (found) => found)
    .filter((fault) => {
      const name = /: (\w+)\[/.exec(fault)?.[1];
      return arrays.has(name);
    })
    .map((fault) => fault.replace(/: (\S+)$/, ': found $1 of a work array, expected a place with a name'));
};

/** Rooms that give out nothing which only a test takes. The others are still to be cleared. */
const BUSY = [
  'wind',
  'units',
  'maths',
  'atmosphere',
  'aeroplane',
  'aerodrome',
  'simulation',
  'circuit',
  'pilot',
  'session',
  'study',
  'formats',
  'headless',
  'workers',
];

/** What a busy room gives out all the same, and why. */
const IDLE_FOR_A_REASON: Readonly<Record<string, string>> = {
  'src/headless/main.ts main': 'run.mjs calls it, which is no TypeScript',
  'src/headless/main.ts answer': 'the command by no workers, for tests of its contract in one process',
  'src/headless/scenario.ts scenarioFrom': 'the first of scenariosFrom, for tests and benches that fly one',
  'src/formats/recording-json.ts recordingText':
    'what parseRecording and --play read, for tests that write it',
};

const sources = readSources('.', 'src');

describe('the house', () => {
  it('has every import on its table', () => {
    expect(sources.flatMap(importFaults)).toEqual([]);
  });

  it('keeps clocks, luck, inexact functions and the console out of the pure folders', () => {
    expect(sources.flatMap(purityFaults)).toEqual([]);
  });

  it('keeps the sizes of units in src/units', () => {
    expect(sources.flatMap(unitFaults)).toEqual([]);
  });

  it('finds assets by folder in one place only', () => {
    expect(sources.flatMap(globFaults)).toEqual([]);
  });

  it('asks for each part of the page by its own path', () => {
    const parts = sources.flatMap((file) =>
      [...file.uncommented.matchAll(/(?:get|fetch)Part\(\s*'([^']+)',\s*\(\) => import\('([^']+)'\)/g)].map(
        ([, said = '', specifier = '']) => [`src/${said}`, importedPath(file, specifier)] as const,
      ),
    );
    expect(parts.length).toBeGreaterThan(15);
    for (const [said, imported] of parts) expect(said).toBe(imported);
  });

  it('flies a recording again in one place', () => {
    const plays = (file: SourceFile) =>
      importsOf(file).some(({ specifier }) => importedPath(file, specifier) === 'src/session/playback.ts');
    expect(sources.filter(plays).map(({ path }) => path)).toEqual(['src/session/replay.ts']);
  });

  it('has no crowded folder', () => {
    expect(folderFaults(sources)).toEqual([]);
    const inOne = sources.map((file) => ({ ...file, path: file.path.replace(/^.*\//, 'src/all/') }));
    expect(folderFaults(inOne)).toHaveLength(1);
  });

  it('has no files that import each other round about', () => {
    expect(circlesOf(sources)).toEqual([]);
  });

  it('names the places of its work arrays', () => {
    expect(sources.flatMap(placeFaults)).toEqual([]);
  });

  it('gives out nothing that only tests take', () => {
    const idle = idleExports(sources).filter((name) => BUSY.includes(roomOf(name)));
    expect(idle.sort()).toEqual(Object.keys(IDLE_FOR_A_REASON).sort());
  });

  it('certifies in tests/truth what it calls itself', () => {
    const idle = new Set(idleExports(sources));
    const certified = [...takenBy(readSources('.', 'tests/truth'))].flatMap(([path, names]) =>
      [...names].map((name) => `${path} ${name}`),
    );
    expect(certified.length).toBeGreaterThan(50);
    expect(certified.filter((name) => BUSY.includes(roomOf(name)) && idle.has(name))).toEqual([]);
  });

  it('was really read, and its table has no circle', () => {
    expect(sources.length).toBeGreaterThan(20);
    expect(sources.reduce((sum, file) => sum + importsOf(file).length, 0)).toBeGreaterThan(30);
    const reaches = (from: string, to: string, seen = new Set<string>()): boolean =>
      (MAY_IMPORT[from] ?? []).some((next) => {
        if (next === to) return true;
        if (seen.has(next)) return false;
        seen.add(next);
        return reaches(next, to, seen);
      });
    for (const room of Object.keys(MAY_IMPORT)) expect(reaches(room, room), room).toBe(false);
  });
});

describe('the checker', () => {
  const faultsOf = (path: string, text: string): string[] => {
    const file = sourceFile(path, text);
    return [
      ...importFaults(file),
      ...purityFaults(file),
      ...unitFaults(file),
      ...globFaults(file),
      ...placeFaults(file),
    ];
  };

  it.each([
    ['src/wind/a.ts', "import { x } from '../atmosphere/isa.ts';"],
    ['src/wind/a.ts', "import type { X } from '../simulation/state.ts';"],
    ['src/pilot/a.ts', "export { x } from '../lesson/judge/rules.ts';"],
    ['src/views/scales/a.ts', "import {\n  x,\n} from '../../session/session.ts';"],
    ['src/pages/fly/a.tsx', "const x = await import('../../headless/main.ts');"],
    ['src/units/a.ts', "import { sin } from '../maths/functions.ts';"],
    ['src/session/a.ts', "import alea from 'seedrandom/lib/alea.js';"],
    ['src/study/a.ts', "import { readFileSync } from 'node:fs';"],
    ['src/views/a.ts', "import react from 'react';"],
    ['src/attic/a.ts', ''],
    ['src/pilot/a.ts', 'const t = Date.now();'],
    ['src/pilot/a.ts', 'const t = new Date();'],
    ['src/pilot/a.ts', 'const t = performance.now();'],
    ['src/pilot/a.ts', 'const x = Math.random();'],
    ['src/pilot/a.ts', 'const x = 1 + Math.hypot(1, 2);'],
    ['src/pilot/a.ts', 'const x = y ** 2;'],
    ['src/pilot/a.ts', "console.warn('x');"],
    ['src/pilot/a.ts', `const text = \`about $\{Math.sin(x)}\`;`],
    ['src/pages/a.ts', 'const ft = m / 0.3048;'],
    ['src/pages/a.ts', 'const deg = (rad * 180) / Math.PI;'],
    ['src/circuit/a.ts', 'const m = 1852 * nmi;'],
    ['src/pages/a.ts', "const files = import.meta.glob('./*.json');"],
    ['src/pilot/a.ts', 'const given = new Float64Array(4);\nconst x = given[3];'],
    ['src/simulation/a.ts', 'const lay = (into: Float64Array): void => {\n  into[0] = 1;\n};'],
    ['src/simulation/a.ts', 'const look = (state: State): number => state[2] as number;'],
  ])('reports a fault in %s: %s', (path, text) => {
    const faults = faultsOf(path, text);
    expect(faults.length).toBe(1);
    expect(faults[0]).toMatch(/^src\/[\w./]+:\d+: /);
  });

  it('finds a circle of imports, of types too, and a crowded folder', () => {
    const a = sourceFile('src/pilot/a.ts', "import type { B } from './b.ts';");
    const b = sourceFile('src/pilot/b.ts', "export { c } from './c.ts';");
    const c = sourceFile('src/pilot/c.ts', "import { a } from './a.ts';");
    expect(circlesOf([a, b])).toEqual([]);
    expect(circlesOf([a, b, c])).toEqual([['src/pilot/a.ts', 'src/pilot/b.ts', 'src/pilot/c.ts']]);
    const many = Array.from({ length: 21 }, (_, i) => sourceFile(`src/pilot/${i}.ts`, ''));
    expect(folderFaults(many)).toEqual(['src/pilot: must hold at most 20 files, holds 21']);
    expect(folderFaults(many.slice(1))).toEqual([]);
  });

  it('finds an export that nobody takes', () => {
    const a = sourceFile('src/maths/a.ts', 'export const used = 1;\nexport const idle = 2; // idle');
    const b = sourceFile(
      'src/maths/b.ts',
      "import { used } from './a.ts';\nexport const own = used;\nown();",
    );
    expect(idleExports([a, b])).toEqual(['src/maths/a.ts idle']);
    const c = sourceFile('src/maths/c.ts', "import * as a from './a.ts';");
    expect(idleExports([a, b, c])).toEqual([]);
  });

  it('gives the line', () => {
    expect(faultsOf('src/pilot/a.ts', '/* one\ntwo */\n\nconst x = Math.sin(1);')[0]).toMatch(
      /^src\/pilot\/a\.ts:4: /,
    );
    expect(faultsOf('src/wind/a.ts', "import {\n  x,\n} from '../pilot/b.ts';")[0]).toMatch(
      /^src\/wind\/a\.ts:3: /,
    );
  });

  it.each([
    ['src/pilot/a.ts', '// Math.sin and Date.now() and 0.3048 in a comment\n/* 2 ** 3 */'],
    ['src/pilot/a.ts', "const text = 'Math.random() and 1852';"],
    ['src/pilot/a.ts', "import { sin } from '../maths/functions.ts';\nconst x = sin(1) + Math.sqrt(2);"],
    ['src/pilot/a.ts', "const pattern = /['\"]/;\nconst text = 'console.log';"],
    ['src/pilot/a.ts', 'const half = a / b; // Date.now()'],
    ['src/pilot/a.ts', 'const n = 11852 + 1.1852;'],
    ['src/pilot/a.ts', 'const first = points[0];'],
    ['src/maths/a.ts', 'const one = new Float64Array(1);\none[0] = 2;'],
    ['src/simulation/a.ts', 'const given = new Float64Array(N);\nconst x = given[GIVEN.lift];'],
    ['src/pages/a.tsx', "import react from 'react';\nconst t = performance.now();"],
    ['src/headless/a.ts', "import { readFileSync } from 'node:fs';\nimport { x } from '../catalogue.ts';"],
  ])('lets %s pass: %s', (path, text) => {
    expect(faultsOf(path, text)).toEqual([]);
  });
});
