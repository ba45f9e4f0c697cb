import { existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { parseJson } from '../formats/json-text.ts';

/** Where the caller stands: `npm run` moves to the package's folder and leaves the caller's in INIT_CWD. */
export const callersFolder = (env: NodeJS.ProcessEnv, here: string): string =>
  env.npm_lifecycle_event === 'fly' && env.INIT_CWD !== undefined ? env.INIT_CWD : here;

/** The text of a file; an Error sentence when it cannot be read. */
export const readText = (folder: string, file: string): string => {
  try {
    return readFileSync(resolve(folder, file), 'utf8');
  } catch (error) {
    throw new Error(`${file}: must be a file that can be read, ${reasonOf(error)}`);
  }
};

export const readJson = (folder: string, file: string): unknown =>
  parseJson(readText(folder, file), basename(file));

/** Before the first step: an Error sentence when the file could not be written later. */
export const checkOutput = (folder: string, file: string): void => {
  const path = resolve(folder, file);
  const parent = dirname(path);
  if (!existsSync(parent) || !statSync(parent).isDirectory()) {
    throw new Error(`${file}: must lie in a folder that exists, ${parent} does not`);
  }
  if (existsSync(path) && statSync(path).isDirectory())
    throw new Error(`${file}: must be a file, is a folder`);
};

/** Writes under a temporary name beside it, then renames: nobody ever sees half a file. */
export const writeWhole = (folder: string, file: string, text: string): void => {
  const path = resolve(folder, file);
  const temporary = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    writeFileSync(temporary, text);
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw new Error(`${file}: must be a file that can be written, ${reasonOf(error)}`);
  }
};

/** `track.csv` and 7: `track-7.csv`. */
export const withSeed = (file: string, seed: number): string => {
  const dot = basename(file).lastIndexOf('.');
  const at = dot <= 0 ? file.length : file.length - basename(file).length + dot;
  return `${file.slice(0, at)}-${seed}${file.slice(at)}`;
};

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is none',
  EISDIR: 'it is a folder',
  EACCES: 'access is refused',
  ENOSPC: 'the disk is full',
};

const reasonOf = (error: unknown): string => {
  const code = (error as { code?: string }).code ?? '';
  return REASONS[code] ?? (code || String(error));
};
