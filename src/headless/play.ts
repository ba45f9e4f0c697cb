import { basename } from 'node:path';
import { parseRecording } from '../formats/recording-json.ts';
import { firstDifference } from '../session/replay.ts';
import { MODEL_VERSION } from '../simulation/scenario.ts';
import { readJson } from './files.ts';
import { asInput } from './refused.ts';

/** Flies a recording again and says where it first stands elsewhere. */
export const play = (file: string, folder: string): string => {
  const recording = asInput(() => parseRecording(readJson(folder, file), basename(file)));
  const other =
    recording.modelVersion === MODEL_VERSION
      ? ''
      : `recorded with model version ${recording.modelVersion}, this is ${MODEL_VERSION}: differences are to be expected\n`;
  const difference = firstDifference(recording);
  if (difference === null) return `${other}no difference in ${recording.steps} steps\n`;
  const { step, slot, recorded, flown } = difference;
  return `${other}step ${step}, ${slot}: recorded ${recorded}, flown ${flown}\n`;
};
