import { expect, it } from 'vitest';
import { lookup } from '../../../src/maths/tables.ts';

const flapDeg = [0, 10, 20, 30];
const lift = [0, 0.25, 0.45, 0.62];

it('a table is straight between its points and level beyond them', () => {
  expect(lookup(flapDeg, lift, 10)).toBe(0.25);
  expect(lookup(flapDeg, lift, 15)).toBeCloseTo(0.35, 15);
  expect(lookup(flapDeg, lift, -5)).toBe(0);
  expect(lookup(flapDeg, lift, 40)).toBe(0.62);
  expect(lookup([3], [7], 100)).toBe(7);
});

// FAA-H-8083-25 chapter 11, chart interpolation: 1,115 ft at 2,000 ft and 1,230 ft at 3,000 ft.
it('a performance chart is read between its lines as the handbook does', () => {
  expect(lookup([2000, 3000], [1115, 1230], 2500)).toBeCloseTo(1172.5, 10);
});
