import { reference } from './reference.ts';

export const SETTINGS_OF_FOUR = reference({
  what: 'elevations at which the units change colour, set to 3 degrees; unit 0 is furthest from the runway',
  source: 'ICAO Doc 9157 part 4, PAPI settings for 3 degrees',
  certainty: 'VERIFIED',
  columns: ['unit', 'deg', 'minutes'],
  rows: [
    [0, 2, 30],
    [1, 2, 50],
    [2, 3, 10],
    [3, 3, 30],
  ],
});

export const TRANSITION = reference({
  what: 'most that a change from red to white may take',
  source: 'ICAO Doc 9157 part 4',
  certainty: 'VERIFIED',
  columns: ['minutes of arc'],
  rows: [[3]],
});

export const PICTURES_OF_FOUR = reference({
  what: 'what is seen from where, from the unit furthest from the runway to the nearest',
  source: 'EASA CS-ADR-DSN.M.645; ICAO Annex 14 vol. I, 5.3.5',
  certainty: 'VERIFIED',
  columns: ['deg', 'minutes', 'letters', 'meaning'],
  rows: [
    [3, 35, 'WWWW', 'too high'],
    [3, 20, 'WWWR', 'slightly high'],
    [3, 0, 'WWRR', 'on slope'],
    [2, 40, 'WRRR', 'slightly low'],
    [2, 25, 'RRRR', 'too low'],
  ],
});

export const HEIGHTS_OF_FOUR = reference({
  what: 'feet above the plane of the lights at which unit 0 to 3 change colour, tan of the settings',
  source: 'ICAO Doc 9157 part 4, PAPI settings for 3 degrees',
  certainty: 'RECOMPUTED',
  columns: ['NM', 'ft', 'ft', 'ft', 'ft'],
  rows: [
    [0.25, 66, 75, 84, 93],
    [0.5, 133, 150, 168, 186],
    [1, 265, 301, 336, 372],
    [1.5, 398, 451, 504, 557],
    [2, 531, 601, 672, 743],
    [3, 796, 902, 1008, 1115],
  ],
});

export const SLOPE_FT_PER_NMI = reference({
  what: 'fall of a 3-degree slope',
  source: 'tan 3 deg of 1,852 m',
  certainty: 'RECOMPUTED',
  columns: ['deg', 'ft in a NM'],
  rows: [[3, 318.4]],
});

/** Offsets from the nominal slope, so that an installation set to 4 degrees has them about 4. */
export const OFFSETS_OF_TWO = reference({
  what: 'offset of the two units of an abbreviated installation; unit 0 is the outer',
  source: 'L-880/L-881 installation manual',
  certainty: 'VERIFIED',
  columns: ['unit', 'minutes'],
  rows: [
    [0, -15],
    [1, 15],
  ],
});

export const PICTURES_OF_TWO = reference({
  what: 'outer and inner unit, against the nominal slope',
  source: 'EASA CS-ADR-DSN.M.645',
  certainty: 'VERIFIED',
  columns: ['minutes off the slope', 'letters'],
  rows: [
    [20, 'WW'],
    [0, 'WR'],
    [-20, 'RR'],
  ],
});

export const TWO_FROM_EDGE = reference({
  what: 'metres from the edge of the runway to the inner unit of an abbreviated installation',
  source: 'summary of ICAO Doc 9157 part 4',
  certainty: 'QUOTED',
  columns: ['m'],
  rows: [[10]],
});

export const SPACING_OF_TWO_FROM_MEMORY = reference({
  what: 'metres between the two units of an abbreviated installation',
  source: 'ICAO Annex 14 vol. I',
  certainty: 'MEMORY',
  columns: ['m', 'lowest', 'highest'],
  rows: [[6, 5, 7]],
});

export const RANGE_BY_DAY = reference({
  what: 'from how far the lights are seen by day; whether statute or nautical is not said',
  source: 'FAA AIM 2-1-2 b',
  certainty: 'VERIFIED',
  columns: ['kind', 'about miles'],
  rows: [['PAPI', 5]],
});

export const LEAST_RANGE = reference({
  what: 'from how far visual approach slope indicators are seen at least, whole and abbreviated',
  source: 'Transport Canada AIM AGA 7.6, as its glossary quotes it',
  certainty: 'QUOTED',
  columns: ['kind', 'NM'],
  rows: [
    ['PAPI', 4],
    ['APAPI', 2.5],
  ],
});
