import { reference } from './reference.ts';

export const RUNWAY_WINDS = reference({
  what: 'headwind and crosswind as printed, to the knot, crosswind + from the right',
  source: 'FAA-H-8083-25 performance sample 10, and two FAA knowledge-test questions',
  certainty: 'VERIFIED',
  columns: ['runway deg', 'from deg', 'kt', 'kt ahead', 'kt across'],
  rows: [
    [170, 140, 25, 22, -13],
    [180, 220, 30, 23, 19],
    [250, 210, 25, null, -16],
  ],
});

export const RUNWAY_WINDS_EXACT = reference({
  what: 'the same by cosine and sine',
  source: 'components of a vector, textbook trigonometry',
  certainty: 'RECOMPUTED',
  columns: ['runway deg', 'from deg', 'kt', 'kt ahead', 'kt across'],
  rows: [
    [170, 140, 25, 21.65, -12.5],
    [180, 220, 30, 22.98, 19.28],
    [250, 210, 25, 19.15, -16.07],
  ],
});

export const WIND_SHARES = reference({
  what: 'share of a wind across and along, four places',
  source: 'table of sines and cosines, textbook trigonometry',
  certainty: 'RECOMPUTED',
  columns: ['deg off', 'across', 'along'],
  rows: [
    [15, 0.2588, 0.9659],
    [30, 0.5, 0.866],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: as the table prints it
    [45, 0.7071, 0.7071],
    [60, 0.866, 0.5],
    [75, 0.9659, 0.2588],
  ],
});

export const WIND_TRIANGLES = reference({
  what: 'groundspeed of a track flown in a wind, as printed, to the knot',
  source: 'FAA-H-8083-25 ch. 16, example E to P, and three printed dead-reckoning examples',
  certainty: 'VERIFIED',
  columns: ['track deg', 'from deg', 'kt of wind', 'kt true', 'kt over the ground'],
  rows: [
    [90, 45, 40, 120, 88],
    [270, 180, 30, 120, 116],
    [45, 90, 25, 110, 91],
    [360, 180, 15, 80, 95],
  ],
});

export const WIND_TRIANGLES_EXACT = reference({
  what: 'the same by the law of sines: correction, heading, groundspeed',
  source: 'wind triangle, textbook trigonometry',
  certainty: 'RECOMPUTED',
  columns: [
    'track deg',
    'from deg',
    'kt of wind',
    'kt true',
    'deg of correction',
    'heading deg',
    'kt over the ground',
  ],
  rows: [
    [90, 45, 40, 120, -13.63, 76.37, 88.34],
    [270, 180, 30, 120, -14.48, 255.52, 116.19],
    [45, 90, 25, 110, 9.25, 54.25, 90.89],
    [360, 180, 15, 80, 0, 360, 95],
  ],
});

export const PROFILE_HEIGHTS_M = [2, 3, 5, 20, 50, 100, 150, 300] as const;

export const LOG_LAW = reference({
  what: 'mean wind at the heights above over that at 10 m, by the logarithmic law; four places',
  source: 'log law over Davenport and WMO roughness classes (open, roughly open, rough)',
  certainty: 'RECOMPUTED',
  columns: ['m of roughness', ...PROFILE_HEIGHTS_M.map(() => 'of the wind at 10 m')],
  rows: [
    [0.03, 0.7229, 0.7927, 0.8807, 1.1193, 1.2771, 1.3964, 1.4662, 1.5855],
    [0.1, 0.6505, null, 0.8495, 1.1505, 1.3495, 1.5, 1.588, 1.7386],
    [0.25, 0.5637, null, 0.8121, 1.1879, 1.4363, 1.6242, 1.7341, 1.922],
  ],
});

export const WIND_BY_HEIGHT_EXAMPLE = reference({
  what: 'a worked example of the log law',
  source: 'a page on wind profiles, worked example over open ground (author not noted)',
  certainty: 'VERIFIED',
  columns: ['m of roughness', 'm/s at 10 m', 'm', 'm/s'],
  rows: [[0.03, 10, 80, 13.58]],
});

const SHEAR = 'MIL-F-8785C, mean-wind shear: ln(h/z0)/ln(20/z0), z0 0.15 ft category C, 2 ft otherwise';

export const SHEAR_BY_HEIGHT = reference({
  what: 'mean wind over that at 20 ft',
  source: SHEAR,
  certainty: 'RECOMPUTED',
  columns: ['ft of roughness', 'ft', 'of the wind at 20 ft'],
  rows: [
    [0.15, 3, 0.6123],
    [0.15, 5, 0.7167],
    [0.15, 10, 0.8583],
    [0.15, 20, 1],
    [0.15, 50, 1.1873],
    [0.15, 100, 1.3289],
    [0.15, 200, 1.4706],
    [0.15, 500, 1.6579],
    [0.15, 1000, 1.7995],
    [2, 3, 0.1761],
    [2, 10, 0.699],
    [2, 20, 1],
    [2, 50, 1.3979],
    [2, 100, 1.699],
    [2, 200, 2],
    [2, 1000, 2.699],
  ],
});

export const SHEAR_ON_FINAL = reference({
  what: 'ten-metre wind over that at 20 ft; and 15 kt at 20 ft, at 50 and at 10 ft',
  source: SHEAR,
  certainty: 'RECOMPUTED',
  columns: ['of the wind at 20 ft', 'kt at 20 ft', 'kt at 50 ft', 'kt at 10 ft'],
  rows: [[1.101, 15, 17.81, 12.88]],
});

export const VERTICAL_OVER_FRICTION = reference({
  what: 'standard deviation of the vertical gust that the wind makes at the surface, over the friction velocity',
  source: 'Panofsky et al. 1977, in EPA-454/R-03-004 section 4.1.5',
  certainty: 'VERIFIED',
  columns: ['of u*'],
  rows: [[1.3]],
});

/** What they give at a height and an airspeed is worked out in turbulence.test.ts. */
export const TURBULENCE = reference({
  what: 'wind at 20 ft that drives light, moderate and severe turbulence; horizontal length and ratio from memory',
  source: 'MIL-F-8785C',
  certainty: 'RECOMPUTED',
  columns: ['kt at 20 ft', 'word'],
  rows: [
    [15, 'light'],
    [30, 'moderate'],
    [45, 'severe'],
  ],
});
