/** Source files read as text: comments and strings taken out, line numbers kept. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, resolve, sep } from 'node:path';

export interface SourceFile {
  /** Path below the repository, with forward slashes. */
  readonly path: string;
  /** Without comments, strings kept: for imports. */
  readonly uncommented: string;
  /** Without comments and with empty strings: for what the code does. */
  readonly bare: string;
}

export interface Import {
  readonly line: number;
  readonly specifier: string;
}

const REGEX_MAY_FOLLOW = /[=(,:[!&|?{};]\s*$|\breturn\s*$/;

const blank = (text: string): string => text.replace(/[^\n]/g, ' ');

/** End of the quoted text that begins at `from`; a plain string ends at its line's end at the latest. */
function quotedEnd(text: string, from: number): number {
  const quote = text[from];
  let i = from + 1;
  while (i < text.length && text[i] !== quote) {
    if (text[i] === '\n' && quote !== '`') return i;
    i += text[i] === '\\' ? 2 : 1;
  }
  return Math.min(i + 1, text.length);
}

/** End of the regular expression that begins at `from`, or `from` where it is a division after all. */
function regexEnd(text: string, from: number): number {
  const found = /^\/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/.exec(text.slice(from, from + 400));
  return found ? from + found[0].length : from;
}

/** Takes comments out, and the contents of strings and regular expressions too where `strings` is false. */
export function strip(text: string, strings: boolean): string {
  let out = '';
  let i = 0;
  while (i < text.length) {
    const two = text.slice(i, i + 2);
    let end = i;
    let keep = false;
    if (two === '//') end = text.indexOf('\n', i) < 0 ? text.length : text.indexOf('\n', i);
    else if (two === '/*') end = text.indexOf('*/', i) < 0 ? text.length : text.indexOf('*/', i) + 2;
    else if ('\'"`'.includes(text[i]!)) {
      end = quotedEnd(text, i);
      keep = strings;
      // What stands in ${ } is code: keep it.
      if (!strings && text[i] === '`') {
        const inside = text.slice(i, end);
        out += inside.replace(/\$\{([^}]*)\}|[^\n]/g, (_all, code?: string) =>
          code === undefined ? ' ' : `  ${code} `,
        );
        i = end;
        continue;
      }
    } else if (text[i] === '/' && REGEX_MAY_FOLLOW.test(out.slice(-40))) {
      end = regexEnd(text, i);
      keep = strings;
    }
    if (end > i) {
      out += keep ? text.slice(i, end) : blank(text.slice(i, end));
      i = end;
    } else out += text[i++];
  }
  return out;
}

export const sourceFile = (path: string, text: string): SourceFile => ({
  path,
  uncommented: strip(text, true),
  bare: strip(text, false),
});

/** Every TypeScript file below a folder of the repository. */
export function readSources(root: string, folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((file) =>
      sourceFile(relative(resolve(root), file).split(sep).join('/'), readFileSync(file, 'utf8')),
    );
}

/** Line number of a place in a text, from 1. */
export const lineAt = (text: string, index: number): number => text.slice(0, index).split('\n').length;

const IMPORTS = [
  /\b(?:import|export)\b[^;'"`]*?\bfrom\s*(['"])([^'"\n]+)\1/g,
  /\bimport\s*(['"])([^'"\n]+)\1/g,
  /\bimport\s*\(\s*(['"`])([^'"`\n]+)\1/g,
  /\bnew\s+URL\(\s*(['"])([^'"\n]+)\1\s*,\s*import\.meta\.url/g,
];

/** Everything a file imports, dynamically or as a type too. */
export function importsOf(file: SourceFile): Import[] {
  const found: Import[] = [];
  for (const pattern of IMPORTS) {
    for (const match of file.uncommented.matchAll(pattern)) {
      const at = match.index + match[0].lastIndexOf(match[2]!);
      found.push({ line: lineAt(file.uncommented, at), specifier: match[2]! });
    }
  }
  return found.sort((a, b) => a.line - b.line);
}

/** Where a relative import leads, below the repository; a package keeps its name. */
export const importedPath = (file: SourceFile, specifier: string): string =>
  specifier.startsWith('.') ? posix.normalize(posix.join(posix.dirname(file.path), specifier)) : specifier;

/** Relative imports of a module, whether each is of types alone. */
export function modulesOf(file: SourceFile): { readonly path: string; readonly types: boolean }[] {
  return [...file.uncommented.matchAll(/\b(?:import|export)\b([^;'"`]*?)\bfrom\s*(['"])(\.[^'"\n]+)\2/g)].map(
    ([, what = '', , specifier = '']) => ({
      path: importedPath(file, specifier),
      types: /^\s*type\b/.test(what),
    }),
  );
}

/** Files that import each other round about, each circle by its files; imports of types count as well. */
export function circlesOf(files: readonly SourceFile[]): string[][] {
  const next = new Map(files.map((file) => [file.path, modulesOf(file).map(({ path }) => path)]));
  const order = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  // Tarjan's strongly connected components
  const visit = (path: string): number => {
    const number = order.size;
    order.set(path, number);
    open.push(path);
    let low = number;
    for (const other of next.get(path) ?? []) {
      if (!next.has(other)) continue;
      if (!order.has(other)) low = Math.min(low, visit(other));
      else if (open.includes(other)) low = Math.min(low, order.get(other)!);
    }
    if (low === number) {
      const circle = open.splice(open.indexOf(path)).sort();
      if (circle.length > 1) circles.push(circle);
    }
    return low;
  };
  for (const { path } of files) if (!order.has(path)) visit(path);
  return circles;
}

/** Names by the module they are taken from; `*` for a module taken whole. */
type Taken = ReadonlyMap<string, ReadonlySet<string>>;

const names = (list: string): string[] =>
  list
    .split(',')
    .map((name) => name.trim().replace(/^type\s+/, ''))
    .filter((name) => name !== '');

/** What files take from other files of the repository, by import or export. */
export function takenBy(files: readonly SourceFile[]): Taken {
  const taken = new Map<string, Set<string>>();
  const take = (from: string, name: string): void => {
    taken.set(from, (taken.get(from) ?? new Set()).add(name));
  };
  for (const file of files) {
    const text = file.uncommented;
    const from = (specifier = ''): string => importedPath(file, specifier);
    for (const [, list = '', , specifier] of text.matchAll(
      /\b(?:import|export)\s+(?:type\s+)?\{([^}]*)\}\s*from\s*(['"])(\.[^'"]+)\2/g,
    ))
      for (const name of names(list)) take(from(specifier), name.split(/\s+as\s+/)[0]!);
    for (const [, , specifier] of text.matchAll(/\*\s*(?:as\s+\w+\s*)?from\s*(['"])(\.[^'"]+)\1/g))
      take(from(specifier), '*');
    for (const [, , specifier] of text.matchAll(/\bimport\(\s*(['"])(\.[^'"]+)\1\s*\)/g))
      take(from(specifier), '*');
  }
  return taken;
}

/** The names that a file gives out. */
const givenBy = ({ uncommented }: SourceFile): string[] => [
  ...[
    ...uncommented.matchAll(
      /^export\s+(?:async\s+)?(?:const|let|function\*?|class|interface|type|enum)\s+(\w+)/gm,
    ),
  ].map(([, name = '']) => name),
  ...[...uncommented.matchAll(/^export\s+(?:type\s+)?\{([^}]*)\}/gm)].flatMap(([, list = '']) =>
    names(list).map((name) => name.split(/\s+as\s+/).at(-1)!),
  ),
];

/** Names given out that no other file takes and their own file does not use, each as `path name`. */
export function idleExports(files: readonly SourceFile[]): string[] {
  const taken = takenBy(files);
  return files.flatMap((file) => {
    const wanted = taken.get(file.path) ?? new Set();
    if (wanted.has('*')) return [];
    const uses = (name: string): number => file.bare.match(new RegExp(`\\b${name}\\b`, 'g'))?.length ?? 0;
    return givenBy(file)
      .filter((name) => !wanted.has(name) && uses(name) <= 1)
      .map((name) => `${file.path} ${name}`);
  });
}
