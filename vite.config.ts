/// <reference types="vitest/config" />
import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';
import { parseAerodrome } from './src/aerodrome/parse.ts';
import { parseAeroplane } from './src/aeroplane/parse.ts';
import { parseExercise } from './src/lesson/exercises/exercise.ts';
import { allowsOwnDay } from './src/lesson/exercises/own-day.ts';
import { parsedFiles } from './src/units/files.ts';

/** The one place where the page's Content-Security-Policy stands. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "media-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the built page; the development server needs inline scripts and goes without. */
const policyMeta = (): Plugin => ({
  name: 'policy-meta',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
});

/** Of an exercise's file asked for with `?judged`: what it is chosen and judged by (src/judged-exercises.ts). */
const judgedExercises = (): Plugin => ({
  name: 'judged-exercises',
  load: {
    filter: { id: /\.json\?judged$/ },
    handler: (path) => {
      const exercise = JSON.parse(readFileSync(path.replace(/\?judged$/, ''), 'utf8'));
      const { id, title, assessed, success, doneAfter, aerodrome } = exercise;
      const anyDay = allowsOwnDay(exercise);
      const text = JSON.stringify({ id, title, assessed, success, doneAfter, aerodrome, anyDay });
      return { code: `export default ${text}`, moduleType: 'js' };
    },
  },
});

/** What an aeroplane claims of itself is for the tests that hold it to it; a page flies without. */
const withoutClaims = (): Plugin => ({
  name: 'aeroplanes-without-claims',
  apply: 'build',
  load: {
    filter: { id: /\/assets\/aeroplanes\/[^/]*\.json$/ },
    handler: (path) => JSON.stringify({ ...JSON.parse(readFileSync(path, 'utf8')), claims: {} }),
  },
});

/**
 * Writes into the page which files belong to each part that is fetched later, by its path below src: they are fetched
 * before they are imported (src/pages/parts/fetch-part.ts). What comes with the first load is not among them.
 */
const partFiles = (): Plugin => {
  const asked = new Set<string>();
  return {
    name: 'part-files',
    apply: 'build',
    moduleParsed: ({ dynamicallyImportedIds }) => {
      for (const id of dynamicallyImportedIds) if (id.includes('/src/')) asked.add(id);
    },
    transformIndexHtml: {
      order: 'post',
      handler: (_, { bundle = {} }) => {
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
        const filesOf = (name: string, found = new Set<string>()): Set<string> => {
          const chunk = chunks.find((each) => each.fileName === name);
          if (chunk === undefined || found.has(name)) return found;
          found.add(name);
          for (const css of chunk.viteMetadata?.importedCss ?? []) found.add(css);
          for (const next of chunk.imports) filesOf(next, found);
          return found;
        };
        const first = new Set(
          chunks.filter((each) => each.isEntry).flatMap((each) => [...filesOf(each.fileName)]),
        );
        const files: string[] = [];
        const parts: Record<string, number[]> = {};
        for (const id of [...asked].sort()) {
          const chunk = chunks.find((each) => each.moduleIds.includes(id));
          if (chunk === undefined) throw new Error(`${id} must be in a file of the built page, was in none`);
          const later = [...filesOf(chunk.fileName)].filter((file) => !first.has(file));
          for (const file of later) if (!files.includes(file)) files.push(file);
          parts[id.replace(/^.*\/src\//, '')] = later.map((file) => files.indexOf(file));
        }
        const children = JSON.stringify({ files, parts });
        // Data, which no policy takes for a script (HTML, "data block")
        return [
          {
            tag: 'script',
            attrs: { id: 'part-files', type: 'application/json' },
            children,
            injectTo: 'body',
          },
        ];
      },
    },
  };
};

/** What lays an exercise ready and reads out its words: several pages do, the flying page does not. */
const EXERCISE_ROOM =
  /\/src\/(?:exercises|pages\/exercise-flight|lesson\/(?:exercises\/exercise|judge\/item-words)|simulation\/performance\/standard-day)/;

/**
 * Few files rather than fifty: what is packed together packs better, by an eighth. First what the first paint needs;
 * what most pages share of flight model, lesson and aeroplanes; what the flying page fetches once the aeroplane is
 * ready.
 */
const LATER =
  /\/src\/(?:pilot\/|lesson\/(?:exercises\/practised|judge\/verdict|procedures\/(?!left-out)|coach)|formats\/result|flight\/(?:model-pilot|other-pilot|result|coach|instruction)\.|pages\/fly\/(?:said\/(?:beside|coach|instruction)|run\/(?:unfinished|result-card|slow)|card\/(?:procedures|radio)|sheets\/(?:tolerance-fields|(?:help|result|setup|unfinished)-sheet|result-drawings))\.)/;

/** What sees a flown flight again and judges it: pages before a flight do without. */
const FLOWN =
  /\/src\/(?:lesson\/(?:watch\/(?!facts|stretch|turns|where|full-power|look-interval)|judge\/(?:first|cause)|procedures\/watch)|session\/|formats\/(?:attempt|plain-json|recording-json|logbook-json|report-schema|base64|series-text)|lesson\/exercises\/instructions)/;

const FILES = [
  { name: 'shell', tags: ['$initial' as const], priority: 3 },
  { name: 'flown', test: FLOWN, minShareCount: 3, priority: 2, includeDependenciesRecursively: false },
  {
    name: 'shared',
    test: (id: string) => /\/src\/|\/assets\/aero|\/seedrandom\//.test(id) && !EXERCISE_ROOM.test(id),
    minShareCount: 3,
    priority: 1,
    includeDependenciesRecursively: false,
  },
  {
    name: 'later',
    test: (id: string) => LATER.test(id),
    includeDependenciesRecursively: false,
  },
];

/**
 * Top-level `const` stays `const`: an engine folds what cannot change, and the flight model's step is a third
 * faster than with the bundler's usual `var`.
 */
const constants = { topLevelVar: false } as const;

/**
 * The pure folders do nothing by being imported (the house forbids it), so that what a page does not use of them is
 * left out of what it asks for.
 */
const PURE = /\/src\/(?:lesson|circuit|pilot|study|formats|flight|units)\/|\/src\/(?:judged-)?exercises\.ts$/;

/** React's interface as preact has it, a tenth of the size: the panels are written for the one and run on the other. */
const PREACT = [
  { find: /^react-dom\/client$/, replacement: 'preact/compat/client' },
  { find: /^react\/jsx-(?:dev-)?runtime$/, replacement: 'preact/jsx-runtime' },
  { find: /^react(?:-dom)?$/, replacement: 'preact/compat' },
];

/** A file in assets that is wrong ends the build with its loader's sentence, before anybody opens the page. */
const checkedAssets = (): Plugin => ({
  name: 'checked-assets',
  apply: 'build',
  buildStart() {
    const loaders = { aeroplanes: parseAeroplane, aerodromes: parseAerodrome, exercises: parseExercise };
    for (const [kind, parse] of Object.entries(loaders)) {
      const folder = `assets/${kind}`;
      const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
      const read = (name: string): unknown => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8'));
      try {
        parsedFiles<{ readonly id: string }>(
          Object.fromEntries(files.map((name) => [name, read(name)])),
          parse,
        );
      } catch (error) {
        if (!(error instanceof Error)) throw error;
        // Through the bundler it would come with two pages of stack
        process.stderr.write(`${error.message}\n`);
        process.exit(1);
      }
    }
  },
});

const TESTS = 'tests/**/*.test.ts';
/** Tests that mock a module, stand a database in, or drive a browser. */
const APART = [
  'tests/browser/**/*.test.ts',
  'tests/unit/storage/**/*.test.ts',
  'tests/unit/lesson/one-row.test.ts',
  'tests/unit/pages/announcer.test.ts',
  'tests/unit/pages/flight-log.test.ts',
];

export default defineConfig(({ isSsrBuild }) => ({
  base: './',
  resolve: { alias: PREACT },
  plugins: [
    policyMeta(),
    partFiles(),
    judgedExercises(),
    ...(isSsrBuild ? [] : [checkedAssets(), withoutClaims()]),
  ],
  worker: { format: 'es', rolldownOptions: { output: constants } },
  preview: { port: 4180, headers: { 'Content-Security-Policy': POLICY } },
  build: isSsrBuild
    ? {
        ssr: 'src/headless/main.ts',
        outDir: '.cache/headless',
        target: 'node20',
        rolldownOptions: { output: { entryFileNames: 'main.js', ...constants } },
      }
    : {
        target: 'es2022',
        assetsInlineLimit: 0,
        modulePreload: { polyfill: false },
        rolldownOptions: {
          output: { ...constants, codeSplitting: { groups: FILES } },
          treeshake: { moduleSideEffects: (id) => !PURE.test(id) },
        },
      },
  ssr: { noExternal: isSsrBuild ? true : [] },
  test: {
    projects: [
      // Most of the time of a small test is reading the sources: once for all that share no state
      { extends: true, test: { name: 'shared', include: [TESTS], exclude: APART, isolate: false } },
      { extends: true, test: { name: 'apart', include: APART } },
    ],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 3,
    reporters:
      process.env.LAPWING_TRUST === '1' ? ['default', './tests/support/trust-reporter.ts'] : ['default'],
    // Its hook imports react, which stands for preact here
    server: { deps: { inline: ['zustand'] } },
  },
}));
