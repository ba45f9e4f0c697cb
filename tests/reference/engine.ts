import { reference } from './reference.ts';

export const POWER_BY_HEIGHT = reference({
  what: 'share of sea-level power, sigma - (1 - sigma)/7.55, in the standard atmosphere',
  source: 'Gagg and Ferrar; form as in Gudmundsson 2014, eq. 7-16',
  certainty: 'RECOMPUTED',
  columns: ['ft', 'of the power'],
  rows: [
    [1000, 0.9672],
    [2000, 0.9352],
    [3000, 0.9039],
    [4000, 0.8733],
    [5000, 0.8433],
    [6000, 0.8141],
    [8000, 0.7577],
    [10000, 0.7038],
  ],
});

export const ACTUATOR_DISK = reference({
  what: 'most thrust of a disk of 1.9 m across from 100 kW at sea level',
  source: 'momentum theory, Rankine 1865 and Froude 1889',
  certainty: 'RECOMPUTED',
  columns: ['kt', 'N'],
  rows: [
    [0, 4110.7],
    [20, 3535.6],
    [40, 2989.8],
    [60, 2505.9],
    [80, 2104.0],
    [100, 1784.8],
  ],
});
