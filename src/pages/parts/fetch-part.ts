import { useStore } from '../store.ts';

/**
 * The parts of the page that are fetched on their own. A browser remembers for as long as a page stands that a module
 * did not come, and never asks again (HTML, "module map"; Chromium does). So the files of a part are fetched as plain
 * files first, which can be tried again, and imported once they have all come.
 */
interface PartFiles {
  readonly files: readonly string[];
  /** Indices into `files`, by the part's path below src. */
  readonly parts: Readonly<Record<string, readonly number[]>>;
}

/** A part that did not come; its message is for the user. */
export class PartMissing extends Error {
  /** Trying again is of no use before the page has been reloaded. */
  readonly reload: boolean;
  constructor(message: string, reload: boolean) {
    super(message);
    this.reload = reload;
  }
}

const NO_ANSWER =
  'A part of this page did not load: there was no answer. Nothing is lost by it; see to the connection and try again.';
const NEWER =
  'A newer version of this page is there, and the old one’s parts are gone: reload it. What was flown is kept, and a flight under way is offered again.';
const NOT_TAKEN =
  'A part of this page was fetched, but the browser does not take it: reload the page. What was flown is kept, and a flight under way is offered again.';

/** Before the second try. */
const WAIT_MS = 800;

/** Written into the built page by vite.config.ts; the development server has none. */
const listed = (): PartFiles | null => {
  const text = typeof document === 'undefined' ? null : document.getElementById('part-files')?.textContent;
  return text ? (JSON.parse(text) as PartFiles) : null;
};

const coming = new Map<string, Promise<void>>();

const fetchOnce = async (file: string): Promise<void> => {
  const answer = await fetch(new URL(file, document.baseURI)).catch(() => null);
  if (answer === null || answer.status >= 500) throw new PartMissing(NO_ANSWER, false);
  // Some servers answer with their first page where a file is gone
  const isPage = answer.headers.get('content-type')?.includes('html') === true;
  if (!answer.ok || isPage) throw new PartMissing(NEWER, true);
  await answer.arrayBuffer().catch(() => {
    throw new PartMissing(NO_ANSWER, false);
  });
};

const fetchFile = (file: string): Promise<void> => {
  const before = coming.get(file);
  if (before !== undefined) return before;
  const come = fetchOnce(file)
    .catch(async () => {
      await new Promise((resolve) => setTimeout(resolve, WAIT_MS));
      await fetchOnce(file);
    })
    .catch((error: unknown) => {
      coming.delete(file);
      throw error;
    });
  coming.set(file, come);
  return come;
};

/** Gets a part of the page, its path below src; rejects with a PartMissing after a second try. */
export const getPart = async <Part>(path: string, load: () => Promise<Part>): Promise<Part> => {
  const list = listed();
  if (list === null) return load();
  await Promise.all((list.parts[path] ?? []).map((i) => fetchFile(list.files[i] as string)));
  return load().catch((error: unknown) => {
    console.error(error);
    throw new PartMissing(NOT_TAKEN, true);
  });
};

/** As getPart; that it did not come is told at the foot of the page. */
export const fetchPart = async <Part>(path: string, load: () => Promise<Part>): Promise<Part> => {
  try {
    const part = await getPart(path, load);
    const { missing } = useStore.getState();
    // There is an answer again: what was pressed has been pressed again
    if (missing !== null && missing.again === null && !missing.reload) useStore.setState({ missing: null });
    return part;
  } catch (error) {
    if (error instanceof PartMissing)
      useStore.setState({ missing: { says: error.message, reload: error.reload, again: null } });
    throw error;
  }
};

/** For whoever asked by the way: fetchPart has told it, and asking again tries again. */
export const alreadyTold = (error: unknown): void => {
  if (!(error instanceof PartMissing)) throw error;
};
