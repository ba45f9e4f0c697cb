import { selects } from './selection.ts';

/**
 * Which exercise trains what: rows of the assessment and ids of `assets/exercises`, the first that fits. One table
 * for what the logbook would have practised next and for what the debrief would have done otherwise next time.
 */
const TRAINED_BY: readonly (readonly [exercise: string, rows: readonly string[]])[] = [
  ['engine-failure-after-take-off', ['engine-failure-*']],
  ['abandoned-take-off', ['stop-answer', 'abandoned-remaining']],
  ['extend-orbit-number-two', ['extended-by', 'orbit-turned', 'read-back', 'spacing-ahead']],
  ['glide-approach', ['glide-power', 'touchdown-in-first-half']],
  ['slip-to-lose-height', ['slip-used']],
  ['soft-field', ['nose-held-off']],
  ['touch-and-go-session', ['three-in-a-row']],
  ['balloon-and-bounce', ['touchdown-bounces']],
  ['go-around', ['go-around*', 'checks-go-around']],
  ['crosswind-circuit', ['final-track', 'touchdown-drift', 'touchdown-crab']],
  [
    'take-off-and-climb',
    ['take-off-roll-*', 'upwind-*', 'turn-to-crosswind-*', 'checks-before-take-off', 'checks-after-take-off'],
  ],
  ['take-off-and-climb', ['crosswind-*', 'turn-to-downwind-*', 'lookout-crosswind', 'lookout-downwind']],
  ['downwind-and-checks', ['downwind-*', 'flap-limit', 'checks-downwind', 'heads-in-*', 'subscale']],
  ['downwind-and-checks', ['brakes-found', 'calls']],
  ['base-and-final', ['base-*', 'turn-to-base-*', 'turn-to-final-*', 'lookout-base', 'lookout-final']],
  ['base-and-final', ['final-overshoot', 'final-height']],
  ['final-and-landing', ['final-*', 'gate-*', 'round-out-height', 'float', 'touchdown-*', 'brakes']],
  ['final-and-landing', ['landing-roll-*', 'stop-remaining', 'checks-final', 'clearance']],
];

/** The exercise that trains a row of the assessment; the normal circuit for what belongs to none. */
export const trainedBy = (row: string): string =>
  TRAINED_BY.find(([, rows]) => selects(rows, row))?.[0] ?? 'normal-circuit';
