import { STEP_HZ } from '../simulation/scenario.ts';
import type { Recording } from './recording.ts';

/** Who had the controls of a recorded flight, by what it was told; somebody's own where it was told nothing. */
export interface FlownBy {
  /** Who had them last. */
  readonly last: 'pilot' | 'model';
  /** From when on its pilot had them to the end; null where the model pilot did. */
  readonly theirsFromS: number | null;
  /** Seconds flown by the model pilot. */
  readonly modelS: number;
}

export const flownBy = ({ events, steps }: Pick<Recording, 'events' | 'steps'>): FlownBy => {
  let last: FlownBy['last'] = 'pilot';
  let fromStep = 0;
  let modelSteps = 0;
  for (const { step, kind, value } of events) {
    if (kind !== 'flies' || value === last) continue;
    if (last === 'model') modelSteps += step - fromStep;
    last = value === 'model' ? 'model' : 'pilot';
    fromStep = step;
  }
  if (last === 'model') modelSteps += steps - fromStep;
  return {
    last,
    theirsFromS: last === 'pilot' ? fromStep / STEP_HZ : null,
    modelS: modelSteps / STEP_HZ,
  };
};

/** A flight that the model pilot ended is shown, not attempted. */
export const isDemonstration = (recording: Pick<Recording, 'events' | 'steps'>): boolean =>
  flownBy(recording).last === 'model';
