import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { preview } from 'vite';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const LOCK = join(ROOT, '.cache/page-build');
/** A lock older than this was left by a run that was stopped. */
const STALE_MS = 120_000;

const newest = (path: string): number => {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
};

const isBuilt = (): boolean => {
  const page = join(ROOT, 'dist/index.html');
  if (!existsSync(page)) return false;
  const sources = ['src', 'assets', 'index.html', 'vite.config.ts', 'package.json'];
  return Math.max(...sources.map((name) => newest(join(ROOT, name)))) < statSync(page).mtimeMs;
};

const lock = async (): Promise<void> => {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  for (;;) {
    try {
      mkdirSync(LOCK);
      return;
    } catch {
      if (existsSync(LOCK) && Date.now() - statSync(LOCK).mtimeMs > STALE_MS) rmdirSync(LOCK);
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  }
};

/** Builds the page when a source is newer; test files that run at once wait for the one that builds. */
const buildOnce = async (): Promise<void> => {
  await lock();
  try {
    if (isBuilt()) return;
    // In a process of its own: inside the test runner the bundler would be transformed like a test.
    await promisify(execFile)(process.execPath, [join(ROOT, 'node_modules/vite/bin/vite.js'), 'build'], {
      cwd: ROOT,
      env: { ...process.env, NODE_ENV: 'production', VITEST: '' },
    });
  } finally {
    rmdirSync(LOCK);
  }
};

export interface Site {
  readonly url: string;
  close(): Promise<void>;
}

/** The built page, served with its policy. */
export const openSite = async (): Promise<Site> => {
  await buildOnce();
  const server = await preview({ root: ROOT, logLevel: 'error', preview: { port: 0, host: '127.0.0.1' } });
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('the preview server gave no port');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    close: () => server.close(),
  };
};
