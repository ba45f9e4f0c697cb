/// <reference types="vitest/config" />
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

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

/**
 * Where pixi enters all it has, used or not, into lists of loaders, sources and masks. The drawn views go by none of
 * those lists (src/views/ink/renderer.ts names its parts), so that what they do not name is left out.
 */
const PIXI_LISTS = /\/pixi\.js\/lib\/(?:index|rendering\/init|spritesheet\/init|.*\/textureFrom)\.mjs$/;

const pixiByName = (): Plugin => ({
  name: 'pixi-by-name',
  apply: 'build',
  transform: {
    filter: { id: PIXI_LISTS },
    handler: (code) => ({ code, map: null, moduleSideEffects: false }),
  },
});

/**
 * Top-level `const` stays `const`: an engine folds what cannot change, and the flight model's step is a third
 * faster than with the bundler's usual `var`.
 */
const constants = { topLevelVar: false } as const;

/**
 * The pure folders do nothing by being imported (the house forbids it), so that what a page does not use of them is
 * left out of what it asks for.
 */
const PURE = /\/src\/(?:lesson|circuit|pilot|study|formats|units)\/|\/src\/exercises\.ts$/;

export default defineConfig(({ isSsrBuild }) => ({
  base: './',
  plugins: [react(), policyMeta(), pixiByName()],
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
          output: constants,
          treeshake: { moduleSideEffects: (id) => !PURE.test(id) },
        },
      },
  ssr: { noExternal: isSsrBuild ? true : [] },
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    reporters: ['default'],
  },
}));
