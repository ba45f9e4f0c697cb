/**
 * From a worn stick's reading to a steady command: a dead zone in the middle, a curve that is gentle there, a
 * grid with hysteresis so that a trembling axis does not write a new value into every step.
 */
export const DEAD_ZONE = 0.08;
const CURVE = 0.6;
const GRID = 1 / 64;

/** -1..1 to -1..1: zero inside the dead zone, then a blend of a straight line and a cube. */
export const curved = (reading: number): number => {
  const size = Math.abs(reading);
  if (!(size > DEAD_ZONE)) return 0;
  const beyond = Math.min(1, (size - DEAD_ZONE) / (1 - DEAD_ZONE));
  return Math.sign(reading) * ((1 - CURVE) * beyond + CURVE * beyond * beyond * beyond);
};

/** The grid value to hold now: the last one until the reading is three quarters of a grid step away. */
export const steadied = (last: number, value: number): number =>
  Math.abs(value - last) < 0.75 * GRID ? last : Math.round(value / GRID) * GRID + 0;
