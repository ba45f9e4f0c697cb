import { reference } from './reference.ts';

export const ROLL_WITHOUT_AIR = reference({
  what: 'landing roll V^2 / (2 g mu) without air',
  source: 'constant deceleration, textbook',
  certainty: 'RECOMPUTED',
  columns: ['kt', 'friction', 'm'],
  rows: [
    [50, 0.3, 112.4],
    [50, 0.4, 84.3],
  ],
});

export const ROLLING_FRICTION_TARMAC = reference({
  what: 'rolling friction on dry concrete, from .02 up; the same text has .3 for very soft ground',
  source: 'aeroplane-design text, ground roll (author not noted)',
  certainty: 'VERIFIED',
  columns: ['at least'],
  rows: [[0.02]],
});

export const ROLLING_FRICTION_FROM_MEMORY = reference({
  what: 'rolling friction of tyres, ranges of several textbooks',
  source: 'aeroplane-design textbooks; NACA TR 583 (1937) for turf',
  certainty: 'MEMORY',
  columns: ['surface', 'lowest', 'highest'],
  rows: [
    ['tarmac', 0.02, 0.05],
    ['grass', 0.05, 0.1],
  ],
});

export const RUN_FACTORS = reference({
  what: 'what lengthens or shortens take-off and landing distance, as factors, which multiply',
  source: 'table of distance factors akin to a CAA leaflet on aeroplane performance (web copy)',
  certainty: 'VERIFIED',
  columns: ['condition', 'take-off', 'landing'],
  rows: [
    ['dry short grass', 1.2, 1.2],
    ['2 % up', 1.1, 0.9],
    ['10 degrees warmer', 1.1, 1.05],
    ['1,000 ft higher', 1.1, 1.05],
    ['tailwind of a tenth of the lift-off speed', 1.2, 1.2],
  ],
});

export const RUN_MARGINS_FROM_MEMORY = reference({
  what: 'margin on take-off and landing distance',
  source: 'CAA Safety Sense leaflet 7',
  certainty: 'MEMORY',
  columns: ['run', 'margin', 'lowest', 'highest'],
  rows: [
    ['take-off', 1.33, 1.25, 1.4],
    ['landing', 1.43, 1.33, 1.5],
  ],
});

export const CLASS_B_LANDING = reference({
  what: 'factors on landing distance for aeroplanes of performance class B: dry grass; landing within the runway',
  source: 'EU air-operations rules, performance class B (acceptable means of compliance)',
  certainty: 'VERIFIED',
  columns: ['dry grass', 'margin'],
  rows: [[1.15, 1.43]],
});

export const HEAVIER_TAKE_OFF = reference({
  what: 'take-off distance with 10 % more weight, as a factor: 25 to 30 % more where thrust over weight is low',
  source: "FAA Pilot's Handbook of Aeronautical Knowledge, take-off performance",
  certainty: 'VERIFIED',
  columns: ['weight', 'at least', 'at most'],
  rows: [[1.1, 1.21, 1.3]],
});

export const HEADWIND_TAKE_OFF_FROM_MEMORY = reference({
  what: 'take-off or landing distance with a headwind of a tenth of the lift-off speed, as a factor: 19 % less',
  source: "FAA Pilot's Handbook of Aeronautical Knowledge, wind effects",
  certainty: 'MEMORY',
  columns: ['lowest', 'highest'],
  rows: [[0.78, 0.84]],
});
