import type { Harm } from './finding.ts';

/** A safety stop by what it does to people, and in an instructor's words, the figures second. */
export interface StopWords {
  readonly harm: Harm;
  readonly says: (what: string) => string;
  /** As a clause. */
  readonly short: string;
  readonly next: string;
  readonly exercise: string;
}

const LEVEL = 'Past 30 degrees of bank in that turn, level the wings and go around.';

/** By the ids of the table of safety stops. */
export const STOP_WORDS: Readonly<Record<string, StopWords>> = {
  warner: {
    harm: 'hurt',
    says: (what) => `You flew it close to the stall: ${what}.`,
    short: 'the stall warner sounded',
    next: 'Stall warner: ease forward, full power, wings level; nothing else until it is silent.',
    exercise: 'final-and-landing',
  },
  'bank-low': {
    harm: 'hurt',
    says: (what) => `You banked steeply near the ground: ${what}.`,
    short: 'you banked steeply near the ground',
    next: LEVEL,
    exercise: 'base-and-final',
  },
  slow: {
    harm: 'gate',
    says: (what) => `You were slow near the ground: ${what}.`,
    short: 'you got slow near the ground',
    next: 'Power and attitude for the speed before anything else; still slow at the gate, go around.',
    exercise: 'final-and-landing',
  },
  'bank-final-turn': {
    harm: 'gate',
    says: (what) => `You banked steeply to save the turn to final: ${what}.`,
    short: 'you banked steeply in the turn to final',
    next: LEVEL,
    exercise: 'base-and-final',
  },
  'four-reds': {
    harm: 'gate',
    says: (what) => `You went on down when you were low: ${what}.`,
    short: 'you came low under four reds',
    next: 'Four reds: power, level flight until two and two, or go around.',
    exercise: 'too-low-on-final',
  },
};
