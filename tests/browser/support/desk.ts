import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import type { Site } from './site.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** A page of tests/browser/pages, built and served by itself. */
export const openTestPage = async (name: string): Promise<Site> => {
  const root = `${ROOT}tests/browser/pages/${name}`;
  const outDir = `${ROOT}.cache/test-pages/${name}`;
  const shared = { root, base: './', configFile: false, logLevel: 'error' } as const;
  await build({ ...shared, build: { outDir, emptyOutDir: true, target: 'es2022' } });
  const server = await preview({ ...shared, build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('the preview server gave no port');
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
};
