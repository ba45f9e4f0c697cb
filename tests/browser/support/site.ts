import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

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

export interface Site {
  readonly url: string;
  close(): Promise<void>;
}

/** The built page, served with its policy; built first when a source is newer. */
export const openSite = async (): Promise<Site> => {
  if (!isBuilt()) await build({ root: ROOT, mode: 'production', logLevel: 'error' });
  const server = await preview({ root: ROOT, logLevel: 'error', preview: { port: 0, host: '127.0.0.1' } });
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('the preview server gave no port');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    close: () => server.close(),
  };
};
