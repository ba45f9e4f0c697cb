import { reference } from './reference.ts';

const CLOSED = 'level coordinated turn: n = 1/cos, R = V^2/(g tan), rate = g tan/V, textbook';

export const CIRCUIT_TURNS = reference({
  what: 'radius, rate and time of a full turn',
  source: CLOSED,
  certainty: 'RECOMPUTED',
  columns: ['kt', 'deg of bank', 'm', 'deg/s', 's for 360 deg'],
  rows: [
    [60, 30, 168.3, 10.51, 34.3],
    [65, 20, 313.3, 6.116, 58.9],
    [65, 30, 197.5, 9.701, 37.1],
    [70, 30, 229.0, 9.008, 40.0],
    [80, 20, 474.5, 4.969, 72.5],
    [80, 30, 299.2, 7.882, 45.7],
    [90, 20, 600.6, 4.417, 81.5],
    [90, 30, 378.6, 7.007, 51.4],
    [100, 30, 467.4, 6.306, 57.1],
    [100, 45, 269.9, 10.922, 33.0],
  ],
});

export const QUARTER_TURNS = reference({
  what: 'radius and time of a turn through 90 degrees',
  source: CLOSED,
  certainty: 'RECOMPUTED',
  columns: ['kt', 'deg of bank', 'm', 's'],
  rows: [
    [60, 15, 363, 18.5],
    [60, 25, 208, 10.6],
    [70, 15, 494, 21.5],
    [70, 20, 363, 15.8],
    [70, 25, 284, 12.4],
    [80, 15, 645, 24.6],
    [80, 25, 370, 14.1],
    [90, 15, 816, 27.7],
    [90, 25, 469, 15.9],
  ],
});

export const STANDARD_RATE = reference({
  what: 'bank of a turn at 3 degrees a second',
  source: CLOSED,
  certainty: 'RECOMPUTED',
  columns: ['kt', 'deg/s', 'deg of bank'],
  rows: [
    [100, 3, 15.36],
    [80, 3, 12.39],
  ],
});

export const LOADS = reference({
  what: 'load factor of a level turn',
  source: CLOSED,
  certainty: 'RECOMPUTED',
  columns: ['deg of bank', 'g'],
  rows: [
    [20, 1.0642],
    [30, 1.1547],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: as the table prints it
    [45, 1.4142],
    [60, 2],
  ],
});

export const STALL_IN_A_TURN = reference({
  what: 'how much faster a level turn stalls',
  source: CLOSED,
  certainty: 'RECOMPUTED',
  columns: ['deg of bank', '% faster'],
  rows: [
    [30, 7.46],
    [45, 18.92],
    [60, 41.42],
  ],
});

/** Constants rounded by the handbook: 11.294 and 1092.2 exactly, 0.3 and 0.1 % away. */
export const TURN_RULES = reference({
  what: 'R in feet = V^2 / (11.26 tan bank), rate in deg/s = 1091 tan bank / V, V in knots',
  source: 'FAA-H-8083-25, rate and radius of turn',
  certainty: 'VERIFIED',
  columns: ['of the radius', 'of the rate'],
  rows: [[11.26, 1091]],
});

export const LOADS_PRINTED = reference({
  what: 'load factor of a level turn as printed',
  source: 'FAA-H-8083-25, load factors in steep turns',
  certainty: 'VERIFIED',
  columns: ['deg of bank', 'g'],
  rows: [[60, 2]],
});

export const STALL_IN_A_TURN_PRINTED = reference({
  what: 'how much faster a level turn stalls, as printed',
  source: 'FAA-H-8083-25, stall speed by bank',
  certainty: 'VERIFIED',
  columns: ['deg of bank', '% faster'],
  rows: [
    [30, 7],
    [45, 19],
    [60, 41],
  ],
});

export const STALL_BY_WEIGHT = reference({
  what: 'stalling speed by weight, goes with its root',
  source: 'lift equation, textbook',
  certainty: 'RECOMPUTED',
  columns: ['of the weight', 'of the speed'],
  rows: [
    [0.8, 0.8944],
    [0.9, 0.9487],
    [1.1, 1.0488],
  ],
});
