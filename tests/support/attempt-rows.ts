import type { AttemptRow, ItemNumber } from '../../src/lesson/attempts/attempt.ts';
import { WHOLE_HELP } from './attempts.ts';

let count = 0;

/** A row of the logbook, written by hand: a landing at the demonstration's place with these items. */
export const attemptRow = (items: readonly ItemNumber[], changes: Partial<AttemptRow> = {}): AttemptRow => {
  count += 1;
  return {
    id: `a${count}`,
    pilot: 'Wren',
    when: `2026-01-${String((count % 28) + 1).padStart(2, '0')}T10:00:00.000Z`,
    exercise: 'normal-circuit',
    aeroplane: 'Sandpiper',
    aerodrome: 'Curlew Sands',
    runway: '22',
    wind: '220/08',
    turbulence: 'none',
    outcome: 'stopped',
    why: '',
    flightS: 400,
    items,
    safety: [],
    missedGoArounds: [],
    help: WHOLE_HELP,
    notes: '',
    ownView: [],
    parent: null,
    modelVersion: 1,
    sizeBytes: 1,
    deletedAt: null,
    ...changes,
  };
};
