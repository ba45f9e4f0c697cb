/** Why the physics ends a flight; State keeps the code and one number. */
export interface Ending {
  readonly code: number;
  readonly outcome: 'crashed' | 'loss-of-control';
  readonly sentence: (value: number) => string;
}

const n = (value: number, decimals = 0) => value.toFixed(decimals);

/** Codes as a state carries them (definition: a number for each). */
export const ENDINGS = {
  collapse: {
    code: 1,
    outcome: 'crashed',
    sentence: (fpm: number) => `the undercarriage gave way: it met the ground sinking at ${n(fpm)} ft/min`,
  },
  noseLeg: {
    code: 2,
    outcome: 'crashed',
    sentence: (times: number) =>
      `the nose leg gave way: it was struck with ${n(times, 1)} times the aeroplane's weight`,
  },
  wingTip: {
    code: 3,
    outcome: 'crashed',
    sentence: (deg: number) => `a wing tip met the ground at ${n(deg)} degrees of bank`,
  },
  ground: { code: 4, outcome: 'crashed', sentence: () => 'the aeroplane met the ground' },
  skiddedLow: {
    code: 5,
    outcome: 'loss-of-control',
    sentence: (ft: number) =>
      `a skidded stall at ${n(ft)} ft: the inner wing dropped and there was no height to recover`,
  },
  skiddedHigh: {
    code: 6,
    outcome: 'loss-of-control',
    sentence: (ft: number) =>
      `a skidded stall at ${n(ft)} ft: the inner wing dropped. Spins are not modelled, so the flight ends here`,
  },
  overspeed: {
    code: 7,
    outcome: 'crashed',
    sentence: (kt: number) => `the airframe failed at ${n(kt)} kt, far beyond its never-exceed speed`,
  },
  belly: {
    code: 9,
    outcome: 'crashed',
    sentence: (down: number) =>
      down > 0
        ? 'the gear folded: it was not yet down and locked when the wheels met the ground'
        : 'it came down on its belly: the gear was up',
  },
  ceiling: {
    code: 8,
    outcome: 'loss-of-control',
    sentence: () => 'the flight left the air this model describes',
  },
} as const satisfies Readonly<Record<string, Ending>>;

export const endingOf = (code: number): Ending | null =>
  Object.values(ENDINGS).find((ending) => ending.code === code) ?? null;
