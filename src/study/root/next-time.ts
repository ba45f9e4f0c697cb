import { trainedBy } from '../../lesson/judge/trained-by.ts';
import type { Change, NextTime } from './result.ts';

/** The row of the assessment that a kind of change speaks to; what trains that row trains the change. */
const ROW_OF: Readonly<Record<Change['kind'], string>> = {
  turn: 'base-turn-angle',
  bank: 'turn-to-final-bank',
  drift: 'final-track',
  height: 'downwind-height',
  descent: 'base-height',
  power: 'base-speed',
  speed: 'final-speed',
  flap: 'flap-limit',
  trim: 'downwind-trim',
};

/** Said as a habit, not as a number: what to look for, where. */
const SAID: Readonly<Record<Change['kind'], string>> = {
  turn: 'Turn by where the runway lies, not by the clock: look, then turn.',
  bank: 'Begin the turn to final in time and fly it at a steady medium bank.',
  drift: 'Pick a point ahead on the track and turn into the wind until it stays put.',
  height: 'Circuit height first: attitude, then the power that holds it, then trim.',
  descent: 'Set the descent up where the brief has it: power, attitude, trim.',
  power: 'Set the power of the brief, then see within ten seconds whether the picture stays.',
  speed: 'Attitude for the speed, look at the needle, trim: before the gate, not after it.',
  flap: 'Flap is part of the turn onto the leg: speed inside the white arc, then the lever.',
  trim: 'After every change of power or flap: hold the attitude, then trim until the hand holds nothing.',
};

const TURNED_LATE = 'late-base-turn';

export const nextTimeFor = (change: Change, wasLate: boolean): NextTime => ({
  sentence: SAID[change.kind],
  exercise: change.leg === 'turn-to-base' && wasLate ? TURNED_LATE : trainedBy(ROW_OF[change.kind]),
});

/** When nothing before the gate would have done it alone. */
export const GOING_AROUND: NextTime = {
  sentence: 'Not stabilised at the gate: go around, and set the next one up earlier.',
  exercise: trainedBy('go-around'),
};
