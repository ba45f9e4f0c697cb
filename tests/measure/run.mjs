// npm run measure -- AEROPLANE [AEROPLANE ...]: what the file claims of itself beside what the model does.
// AEROPLANE is a name in assets/aeroplanes or a file. Ends with 1 when a claim is not kept, with 2 when a file is wrong.
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const outDir = join(root, '.cache', 'measure');
await build({
  root,
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: join(root, 'tests', 'measure', 'measure.ts'),
    outDir,
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: 'measure.js' } },
  },
  ssr: { noExternal: true },
});
const { measure } = await import(pathToFileURL(join(outDir, 'measure.js')).href);
// npm moves to the package's folder and leaves the caller's in INIT_CWD
process.exitCode = measure(process.argv.slice(2), root, process.env.INIT_CWD ?? process.cwd());
