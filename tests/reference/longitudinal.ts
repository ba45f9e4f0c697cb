import { reference } from './reference.ts';

const LANCHESTER = 'phugoid at constant angle of attack, T = sqrt(2) pi V/g (Lanchester), textbook';

export const PHUGOID_PERIOD = reference({
  what: 'period of the phugoid by true airspeed, undamped',
  source: LANCHESTER,
  certainty: 'RECOMPUTED',
  columns: ['kt', 's'],
  rows: [
    [60, 13.98],
    [65, 15.15],
    [80, 18.64],
    [100, 23.31],
  ],
});

export const PHUGOID_IN_THINNING_AIR = reference({
  what: 'period in even air, and in air that thins upward, T / sqrt(1 + V^2 beta / 2g)',
  source: LANCHESTER,
  certainty: 'RECOMPUTED',
  columns: ['kt', 's', 's'],
  rows: [[100, 23.307, 23.157]],
});

/** Authorised ranges for a generic small single where no flight data exist. */
const LEVEL_5 = '14 CFR Part 60 (2014), table B2B, FTD level 5';

export const DEVICE_PHUGOID = reference({
  what: 'period of the phugoid in cruise, and cycles within which it may not halve or double',
  source: `${LEVEL_5}, 2.c.9.b`,
  certainty: 'VERIFIED',
  columns: ['s at least', 's at most', 'cycles'],
  rows: [[30, 60, 2]],
});

export const DEVICE_POWER = reference({
  what: 'time from idle to take-off power',
  source: `${LEVEL_5}, 1.f.1 and 1.f.2`,
  certainty: 'VERIFIED',
  columns: ['s at least', 's at most'],
  rows: [[2, 4]],
});

export const DEVICE_SIGNS = reference({
  what: 'what the hand does at a held speed and trim after a change',
  source: `${LEVEL_5}, 2.c.1 and 2.c.2`,
  certainty: 'VERIFIED',
  columns: ['change', 'hand'],
  rows: [
    ['power to idle', 'pull'],
    ['power to full', 'push'],
    ['flap out, low wing', 'pull'],
  ],
});

export const TRIM_SPEED_DOWN = reference({
  what: 'trim speed on a path 5 degrees down over that in level flight, sqrt(cos)',
  source: 'trim at constant angle of attack, textbook',
  certainty: 'RECOMPUTED',
  columns: ['deg', 'of the speed'],
  rows: [[-5, 0.9981]],
});

export const WARNING_MARGIN_FROM_MEMORY = reference({
  what: 'how far before the stall the warning begins: at least 5 kt',
  source: 'pre-2017 14 CFR 23.207',
  certainty: 'MEMORY',
  columns: ['kt', 'lowest', 'highest'],
  rows: [[5, 4, 12]],
});

export const GROUND_EFFECT_FROM_MEMORY = reference({
  what: 'share of induced drag gone, by height of the wing over span',
  source: 'FAA-H-8083-25, ground effect',
  certainty: 'MEMORY',
  columns: ['of the span', 'share', 'lowest', 'highest'],
  rows: [
    [0.25, 0.235, 0.215, 0.255],
    [0.1, 0.476, 0.456, 0.496],
  ],
});

/** The formula is from memory; its figures agree with the handbook's, where the other known law does not. */
export const WIESELSBERGER_FROM_MEMORY = reference({
  what: 'induced drag left, 1 - (1 - 1.32 h/b) / (1.05 + 7.4 h/b); figures worked out from that formula',
  source: 'Wieselsberger, h/b from 1/15 to 1/2',
  certainty: 'MEMORY',
  columns: ['of the span', 'share', 'lowest', 'highest'],
  rows: [
    [0.1, 0.5151, 0.49, 0.54],
    [0.15, 0.6287, 0.6, 0.66],
    [0.2, 0.7091, 0.68, 0.74],
    [0.25, 0.769, 0.74, 0.8],
    [0.3, 0.8153, 0.78, 0.85],
    [0.5, 0.9284, 0.89, 0.96],
  ],
});
