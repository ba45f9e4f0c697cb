import { basename } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { isLogbook, parseBodyText, parseLogbook } from '../formats/logbook-json.ts';
import { parseRecording } from '../formats/recording-json.ts';
import type { Recording } from '../session/recording.ts';
import { firstDifference } from '../session/replay.ts';
import { MODEL_VERSION } from '../simulation/scenario.ts';
import { readJson } from './files.ts';
import { asInput } from './refused.ts';

/** The most that one packed flight may unpack to, as the page has it. */
const MOST_BYTES = 64 * 1024 * 1024;

const unpacked = (packed: Uint8Array, place: string): string => {
  try {
    return gunzipSync(packed, { maxOutputLength: MOST_BYTES }).toString('utf8');
  } catch {
    throw new Error(`${place} must be a whole gzipped text of at most ${MOST_BYTES / 1048576} MB, was not`);
  }
};

interface Played {
  /** What stands before the answer: empty for the only flight of a file. */
  readonly name: string;
  readonly recording: Recording;
}

/** The recordings of a file: one alone, or those of a logbook that the page has saved. */
const recordingsOf = (json: unknown, file: string): Played[] => {
  if (!isLogbook(json)) return [{ name: '', recording: parseRecording(json, file) }];
  const attempts = parseLogbook(json, file);
  return attempts.map(({ head, body, packed }, i) => {
    const place = `${file}: attempts[${i}].packed`;
    const { recording } = body ?? parseBodyText(unpacked(packed as Uint8Array, place), place);
    return { name: attempts.length === 1 ? '' : `${head.id}: `, recording };
  });
};

const answer = ({ name, recording }: Played): string => {
  const other =
    recording.modelVersion === MODEL_VERSION
      ? ''
      : `${name}recorded with model version ${recording.modelVersion}, this is ${MODEL_VERSION}: differences are to be expected\n`;
  const difference = firstDifference(recording);
  if (difference === null) return `${other}${name}no difference in ${recording.steps} steps\n`;
  const { step, slot, recorded, flown } = difference;
  return `${other}${name}step ${step}, ${slot}: recorded ${recorded}, flown ${flown}\n`;
};

/** Flies every recording of a file again and says where it first stands elsewhere. */
export const play = (file: string, folder: string): string =>
  asInput(() => recordingsOf(readJson(folder, file), basename(file)))
    .map(answer)
    .join('');
