import { type AttemptBody, type AttemptHead, rowOf } from '../formats/attempt.ts';
import { parseJson } from '../formats/json-text.ts';
import { bodyText, parseBodyText, parseLogbook } from '../formats/logbook-json.ts';
import { sameModel } from '../formats/scenario-json.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import { CANCELLED, nameOf } from './file-words.ts';
import { packText, unpackText } from './gzip.ts';

const MB = 1024 * 1024;

/** What a file may hold in all; a thousand flights are some 20 MB, and unpack to some 200 MB (estimate). */
export interface FileLimits {
  /** Files above this are refused before they are read. */
  readonly fileBytes: number;
  /** What its flights unpack to, together. */
  readonly unpackedBytes: number;
}
export const FILE_LIMITS: FileLimits = { fileBytes: 256 * MB, unpackedBytes: 1024 * MB };

/** The longest name of an aeroplane or aerodrome in a row. */
const LONGEST_TITLE = 200;

/** An attempt that has passed every check and waits to be put on its shelf. */
export interface Incoming {
  readonly row: AttemptRow;
  readonly packed: Uint8Array;
  readonly exact: boolean;
}

/** How many of the file's attempts have been checked. */
export interface CheckProgress {
  readonly done: number;
  readonly of: number;
}

/** Checks a file; rejects with an Error sentence at the first fault, and where it was cancelled. */
export type CheckFile = (
  file: File,
  onProgress?: (progress: CheckProgress) => void,
  cancelled?: AbortSignal,
) => Promise<readonly Incoming[]>;

const incomingOf = (head: AttemptHead, body: AttemptBody, packed: Uint8Array, place: string): Incoming => {
  const row = rowOf(head, body, packed.length);
  for (const key of ['exercise', 'aeroplane', 'aerodrome', 'runway'] as const) {
    if (row[key].length > LONGEST_TITLE) {
      throw new Error(`${place}: ${key} must be at most ${LONGEST_TITLE} long, was ${row[key].length}`);
    }
  }
  return { row, packed, exact: sameModel(body.recording.scenario) };
};

/** Every attempt of a file, one after the other, so that only one is unpacked at a time. */
export const checkFile =
  (limits: FileLimits = FILE_LIMITS): CheckFile =>
  async (file, onProgress = () => {}, cancelled) => {
    const name = nameOf(file);
    if (file.size > limits.fileBytes) {
      const mb = Math.round(file.size / MB);
      throw new Error(`${name}: must be at most ${limits.fileBytes / MB} MB, was ${mb} MB`);
    }
    const written = parseLogbook(parseJson(await file.text(), name), name);
    const incoming: Incoming[] = [];
    let unpacked = 0;
    for (const [i, { head, body, packed }] of written.entries()) {
      if (cancelled?.aborted) throw new Error(CANCELLED);
      onProgress({ done: i, of: written.length });
      const place = `${name}: attempts[${i}]`;
      if (body !== null) {
        incoming.push(incomingOf(head, body, await packText(bodyText(body)), place));
      } else if (packed !== null) {
        const text = await unpackText(packed, `${place}.packed`);
        unpacked += text.length;
        if (unpacked > limits.unpackedBytes) {
          const mb = limits.unpackedBytes / MB;
          throw new Error(`${name}: its flights must unpack to at most ${mb} MB together, were more`);
        }
        incoming.push(incomingOf(head, parseBodyText(text, `${place}.packed`), packed, place));
      }
    }
    return incoming;
  };
