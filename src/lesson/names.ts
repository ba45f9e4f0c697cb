/** Where a flight is, as an instructor would say it; the names of the command line's `leg` column. */
export const LEG_NAMES = [
  'line-up',
  'take-off-roll',
  'upwind',
  'turn-to-crosswind',
  'crosswind',
  'turn-to-downwind',
  'downwind',
  'turn-to-base',
  'base',
  'turn-to-final',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
  'go-around',
  'left-the-circuit',
  'crashed',
] as const;

export type LegName = (typeof LEG_NAMES)[number];

/** "turn-to-base" as it is said; a hold-off and a take-off keep their hyphen. */
export const legWords = (leg: string): string =>
  leg === 'hold-off' ? leg : leg.replaceAll('-', ' ').replace('take off', 'take-off');

/** What a turn leads onto. */
export type TurnOnto = 'crosswind' | 'downwind' | 'base' | 'final';

const TURN_ONTO: Partial<Record<LegName, TurnOnto>> = {
  'turn-to-crosswind': 'crosswind',
  'turn-to-downwind': 'downwind',
  'turn-to-base': 'base',
  'turn-to-final': 'final',
};

/** The leg a turn leads onto, or null when `leg` is no turn. */
export const turnOnto = (leg: LegName): TurnOnto | null => TURN_ONTO[leg] ?? null;
