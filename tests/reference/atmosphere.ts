import { reference } from './reference.ts';

const STANDARD = 'US Standard Atmosphere 1976 (ICAO Doc 7488), troposphere';

export const ISA_BY_HEIGHT = reference({
  what: 'the standard atmosphere by geopotential altitude, to the last printed digit',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['ft', 'K', 'hPa', 'inHg', 'kg/m3', 'of sea-level density', 'kt of sound'],
  rows: [
    [0, 288.15, 1013.25, 29.9213, 1.225, 1, 661.48],
    [1000, 286.1688, 977.166, 28.8557, 1.189554, 0.971064, 659.2],
    [2000, 284.1876, 942.129, 27.8211, 1.154897, 0.942773, 656.92],
    [3000, 282.2064, 908.117, 26.8167, 1.121019, 0.915117, 654.62],
    [5000, 278.244, 843.073, 24.8959, 1.055546, 0.86167, 650.01],
    [6000, 276.2628, 811.996, 23.9782, 1.023928, 0.83586, 647.69],
    [8000, 272.3004, 752.624, 22.225, 0.96287, 0.786016, 643.03],
    [10000, 268.338, 696.816, 20.577, 0.904637, 0.738479, 638.33],
  ],
});

export const ISA_TROPOPAUSE = reference({
  what: 'the row of the table at 11 km',
  source: 'US Standard Atmosphere 1976, table row 11 km',
  certainty: 'VERIFIED',
  columns: ['m', 'K', 'Pa'],
  rows: [[11000, 216.65, 22632.1]],
});

export const PRESSURE_ALTITUDE = reference({
  what: 'pressure altitude, printed to the foot',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['hPa', 'ft'],
  rows: [
    [1030, -454],
    [1020, -184],
    [1000, 364],
    [990, 641],
    [950, 1773],
    [900, 3243],
    [850, 4781],
    [700, 9883],
  ],
});

export const DENSITY_ALTITUDE = reference({
  what: 'density altitude of a pressure altitude and a temperature',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['ft of pressure altitude', 'deg C', 'ft of density altitude'],
  rows: [
    [0, 30, 1724],
    [2000, 30, 4161],
    [3000, 25, 4828],
    [5000, 30, 7801],
    [0, -10, -3135],
  ],
});

export const ALTIMETER_SETTINGS = reference({
  what: 'feet from elevation to pressure altitude by altimeter setting, the same at any elevation',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['inHg', 'ft'],
  rows: [
    [28.0, 1825],
    [29.0, 863],
    [29.5, 392],
    [30.1, -165],
    [30.5, -531],
    [31.0, -983],
  ],
});

export const HANDBOOK_SETTING = reference({
  what: "the handbook's table of altimeter settings, the row that its sample uses",
  source: 'FAA-H-8083-25 (2008) ch. 10, density-altitude sample 1',
  certainty: 'VERIFIED',
  columns: ['inHg', 'ft'],
  rows: [[30.1, -165]],
});

export const HANDBOOK_DENSITY_ALTITUDE = reference({
  what: 'elevation, temperature and setting; pressure altitude, and density altitude read off a chart to about 100 ft',
  source: 'FAA-H-8083-25 (2008) ch. 10, density-altitude sample 1',
  certainty: 'VERIFIED',
  columns: ['ft of elevation', 'deg F', 'inHg', 'ft of pressure altitude', 'ft of density altitude'],
  rows: [[5883, 70, 30.1, 5718, 7700]],
});

export const HANDBOOK_DENSITY_ALTITUDE_EXACT = reference({
  what: 'the same sample by the formulas of the standard',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['ft of pressure altitude', 'ft of density altitude'],
  rows: [[5718.1, 7709]],
});

export const CHART_DENSITY_ALTITUDE = reference({
  what: 'density altitude read off the chart, good for 200 ft',
  source: 'FAA-H-8083-25 (2008) ch. 10, density-altitude chart example',
  certainty: 'VERIFIED',
  columns: ['ft of pressure altitude', 'deg F', 'ft of density altitude'],
  rows: [[5500, 77, 7700]],
});

export const CHART_DENSITY_ALTITUDE_EXACT = reference({
  what: 'the same example by the formulas of the standard',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['ft of density altitude'],
  rows: [[7869]],
});

const COMPRESSIBLE = 'calibrated to true airspeed with compressibility, isentropic flow (lecture text, read)';

export const TRUE_AIRSPEED_ALTITUDES_FT = [1000, 2000, 3000, 5000, 8000, 10000] as const;

export const TRUE_AIRSPEED = reference({
  what: 'true airspeed in the standard atmosphere; columns after the first are the altitudes above',
  source: COMPRESSIBLE,
  certainty: 'RECOMPUTED',
  columns: ['kt calibrated', 'kt', 'kt', 'kt', 'kt', 'kt', 'kt'],
  rows: [
    [60, 60.89, 61.79, 62.71, 64.62, 67.65, 69.79],
    [90, 91.32, 92.68, 94.06, 96.91, 101.43, 104.62],
    [100, 101.47, 102.97, 104.5, 107.67, 112.68, 116.22],
    [120, 121.76, 123.55, 125.38, 129.17, 135.16, 139.38],
  ],
});

export const TRUE_AIRSPEED_OFF_STANDARD = reference({
  what: 'true airspeed off the standard day',
  source: COMPRESSIBLE,
  certainty: 'RECOMPUTED',
  columns: ['kt calibrated', 'ft of pressure altitude', 'deg C', 'kt'],
  rows: [
    [90, 2000, 30, 95.72],
    [100, 5000, 25, 111.45],
    [65, 1000, -5, 63.85],
    [70, 5000, 30, 78.69],
  ],
});

export const COMPRESSIBILITY = reference({
  what: 'what compressibility takes off calibrated airspeed',
  source: COMPRESSIBLE,
  certainty: 'RECOMPUTED',
  columns: ['kt calibrated', 'ft', 'kt'],
  rows: [[120, 10000, 0.22]],
});

export const DYNAMIC_PRESSURE = reference({
  what: 'dynamic pressure at sea level, incompressible',
  source: STANDARD,
  certainty: 'RECOMPUTED',
  columns: ['kt', 'Pa'],
  rows: [[65, 684.9]],
});
