// Builds the command when one of its sources is newer than the last build, then runs it.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const cache = join(root, '.cache', 'headless');
const sources = ['src', 'assets', 'vite.config.ts', 'package.json'];

/** Name, size and time of every source, as one short mark: another mark, another build. */
const markOfSources = () => {
  const hash = createHash('sha256');
  const take = (path) => {
    const { isDirectory, mtimeMs, size } = { ...statSync(path), isDirectory: statSync(path).isDirectory() };
    if (isDirectory) for (const name of readdirSync(path).sort()) take(join(path, name));
    else hash.update(`${path} ${size} ${mtimeMs}\n`);
  };
  for (const source of sources) take(join(root, source));
  return hash.digest('hex').slice(0, 16);
};

/** Builds beside, then renames: two commands started at once do not disturb each other. */
const build = async (folder) => {
  const { build: viteBuild } = await import('vite');
  const part = `${folder}.${process.pid}.part`;
  const here = process.cwd();
  process.chdir(root);
  try {
    await viteBuild({
      root,
      configFile: join(root, 'vite.config.ts'),
      logLevel: 'error',
      build: { ssr: 'src/headless/main.ts', outDir: part, emptyOutDir: true },
    });
  } finally {
    process.chdir(here);
  }
  for (const old of readdirSync(cache)) {
    const path = join(cache, old);
    const stale = path !== part && path !== folder && Date.now() - statSync(path).mtimeMs > 60_000;
    if (stale) rmSync(path, { recursive: true, force: true });
  }
  try {
    renameSync(part, folder);
  } catch (error) {
    rmSync(part, { recursive: true, force: true });
    if (!existsSync(join(folder, 'main.js'))) throw error;
  }
};

mkdirSync(cache, { recursive: true });
const folder = join(cache, markOfSources());
if (!existsSync(join(folder, 'main.js'))) await build(folder);
const program = pathToFileURL(join(folder, 'main.js'));
/** An asset that is wrong speaks in a sentence, thrown as a plain Error as it is read; anything else is a defect. */
const loaded = await import(program.href).catch((error) => {
  if (error?.constructor !== Error) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exit(2);
});
const { main } = loaded;
process.stdout.on('error', () => {});
process.exitCode = await main(process.argv.slice(2), program);
