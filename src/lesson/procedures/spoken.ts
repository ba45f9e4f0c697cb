import type { AnswerId, CallId, LightId } from './memory.ts';

/** The call sign is our own. */
export const CALL_SIGN = 'Lapwing 21';

/** Three wordings; the first is the right one. */
export type Wordings = readonly [string, string, string];

export interface Given {
  readonly place: string;
  readonly runway: string;
  readonly other: string;
  /** Said only where circuits are to the right (CAP 413). */
  readonly hand: string;
  readonly wrongHand: string;
  readonly left: 'left' | 'right';
  readonly windFromDegM: number;
  readonly windKt: number;
}

/** The calls of one who flies. */
export type Words = Readonly<Record<CallId, (g: Given) => Wordings>>;

interface Answer {
  /** What the tower says. */
  readonly said: (g: Given) => string;
  /** What may be said back; null: nothing is. */
  readonly back: ((g: Given) => Wordings) | null;
}
/** What a tower says to them, and of itself. */
export type Answers = Readonly<Record<AnswerId, Answer>>;

/**
 * The same on both sides of the ocean: FAA AIM 4-3-13, table 4-3-1; ICAO Annex 2, appendix 1. By day one rocks the
 * wings to say that a light was seen (AIM 4-3-13).
 */
export const LIGHTS: Readonly<Record<LightId, Answer>> = {
  'green-flashes': {
    said: () =>
      'The tower shows green flashes: return for landing, and wait for the steady green. Rock the wings.',
    back: null,
  },
  'green-light': { said: () => 'The tower shows a steady green light: cleared to land.', back: null },
  'red-light': {
    said: () => 'The tower shows a steady red light: give way to others and keep circling.',
    back: null,
  },
};
