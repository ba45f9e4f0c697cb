import { describe, expect, it } from 'vitest';
import { EMPTY_REPORT, type ItemReport, type Report } from '../../../src/lesson/judge/report.ts';
import { verdictOf } from '../../../src/lesson/judge/verdict.ts';

const tooLow: ItemReport = {
  id: 'downwind-height',
  circuit: 2,
  leg: 'downwind',
  value: 640,
  unit: 'ft',
  target: 1000,
  low: 900,
  high: 1100,
  band: 'red',
  source: 'FAA-S-ACS-6 III.B',
};

const report = (items: readonly ItemReport[]): Report => ({ ...EMPTY_REPORT, items });

const STOPPED = { success: ['stopped'] as ['stopped'] };

describe('what stands against an exercise', () => {
  it('is said in the instructor’s words, with value, tolerance and what to do', () => {
    const { passed, against } = verdictOf(STOPPED, 'stopped', '', report([tooLow]));
    expect(passed).toBe(false);
    expect(against[0]).toMatch(
      /^You flew downwind too low: 640 ft, and 900 ft to 1100 ft is the tolerance\. \p{Lu}.*\.$/u,
    );
  });

  it('is nothing once what was to be practised has been flown', () => {
    expect(verdictOf(STOPPED, 'practised', '', report([])).passed).toBe(true);
    expect(verdictOf(STOPPED, 'time-up', 'It was left.', report([])).against).toEqual([
      'the flight ended otherwise: It was left.',
    ]);
  });
});
