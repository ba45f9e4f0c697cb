// Green inside, amber to 1.5 times, red beyond; on the low side of an approach speed amber ends at the greater
// of target - 7.5 kt and 1.2 Vs (design/lesson.md). Tolerances: FAA-S-ACS-6 as the reference file has them.
import { describe, expect, it } from 'vitest';
import { bandOf } from '../../../src/lesson/judge/bands.ts';
import { FAA_LICENCE_TEST, TOLERANCE_SETS } from '../../../src/lesson/judge/tolerances.ts';

describe('bands', () => {
  it.each([
    [1000, 'green'],
    [1100, 'green'],
    [1101, 'amber'],
    [1150, 'amber'],
    [1151, 'red'],
    [900, 'green'],
    [850, 'amber'],
    [849, 'red'],
  ] as const)('put %i ft against 1,000 ft and 100 ft either side to %s', (value, band) => {
    expect(bandOf(value, 1000, 900, 1100)).toBe(band);
  });

  it('end amber at 1.2 Vs where that is nearer than target - 7.5 kt', () => {
    // Target 65 kt, Vs 50 kt: 1.2 Vs is 60 kt, and 57.5 kt would be too slow
    expect(bandOf(60, 65, 60, 75, Math.max(57.5, 60))).toBe('green');
    expect(bandOf(59.9, 65, 60, 75, Math.max(57.5, 60))).toBe('red');
    expect(bandOf(58, 65, 60, 75, Math.max(57.5, 55))).toBe('amber');
    expect(bandOf(57.4, 65, 60, 75, Math.max(57.5, 55))).toBe('red');
  });

  it('give a side without tolerance half of the other', () => {
    expect(bandOf(400, 0, 0, 400)).toBe('green');
    expect(bandOf(600, 0, 0, 400)).toBe('amber');
    expect(bandOf(601, 0, 0, 400)).toBe('red');
    expect(bandOf(-1, 0, 0, 400)).toBe('amber');
    expect(bandOf(-201, 0, 0, 400)).toBe('red');
  });

  it('judge nothing where nothing was measured', () => {
    expect(bandOf(null, 0, -1, 1)).toBe('not-judged');
  });
});

describe('tolerance sets', () => {
  it('hold the figures of the private licence test', () => {
    expect(FAA_LICENCE_TEST.allowed.heightFt).toMatchObject({ below: 100, above: 100 });
    expect(FAA_LICENCE_TEST.allowed.circuitSpeedKt).toMatchObject({ below: 10, above: 10 });
    expect(FAA_LICENCE_TEST.allowed.approachSpeedKt).toMatchObject({ below: 5, above: 10 });
    expect(FAA_LICENCE_TEST.allowed.touchdownFt).toMatchObject({ below: 0, above: 400 });
  });

  it('name a source beside every limit', () => {
    for (const set of TOLERANCE_SETS) {
      for (const limit of Object.values(set.allowed)) expect(limit.source.length).toBeGreaterThan(5);
    }
  });
});
