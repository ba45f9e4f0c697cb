// Bundles the benches that are written in TypeScript, as the command line is bundled.
import { join } from 'node:path';
import { build } from 'vite';

/** Builds `tests/bench/<name>.ts` for each name into `.cache/bench`; returns that folder. */
export const buildBenches = async (root, names) => {
  const outDir = join(root, '.cache', 'bench');
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      rolldownOptions: {
        input: Object.fromEntries(names.map((name) => [name, join(root, 'tests', 'bench', `${name}.ts`)])),
        // As in vite.config.ts: what is measured is what is shipped
        output: { entryFileNames: '[name].js', chunkFileNames: 'shared-[hash].js', topLevelVar: false },
      },
    },
    ssr: { noExternal: true },
  });
  return outDir;
};
