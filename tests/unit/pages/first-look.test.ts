import { describe, expect, it } from 'vitest';
import { EMPTY_REPORT, type ItemReport, type Report } from '../../../src/lesson/judge/report.ts';
import { DEG, FT, valueWords } from '../../../src/lesson/judge/value-words.ts';
import { firstLookAt } from '../../../src/pages/fly/run/result.ts';

const item = (id: string, leg: ItemReport['leg'], band: ItemReport['band']): ItemReport => ({
  id,
  circuit: 1,
  leg,
  value: 1180,
  unit: 'ft',
  target: 1000,
  low: 900,
  high: 1100,
  band,
  source: 'made up for this test',
});

const report = (changes: Partial<Report>): Report => ({ ...EMPTY_REPORT, ...changes });

describe('what to look at first (lesson.md: the root, not the symptom)', () => {
  it('is a safety stop before everything else', () => {
    const first = firstLookAt(
      report({
        items: [item('downwind-height', 'downwind', 'red')],
        safety: [{ at_s: 3, what: 'the stall warner sounded' }],
      }),
    );
    expect(first).toContain('stall warner');
  });

  it('is a go-around that was due and not flown, before any item', () => {
    const due = { at_s: null, height_ft: null, due_at_s: 240, why: 'not stabilised at 300 ft' };
    expect(
      firstLookAt(report({ go_arounds: [due], items: [item('final-speed', 'final', 'red')] })),
    ).toContain('not stabilised at 300 ft');
  });

  it('is the earliest leg outside its tolerance, and says flown value and tolerance', () => {
    const first = firstLookAt(
      report({
        items: [
          item('upwind-height', 'upwind', 'green'),
          item('downwind-height', 'downwind', 'red'),
          item('final-height', 'final', 'red'),
        ],
      }),
    );
    expect(first).toMatch(/^Downwind: height/);
    expect(first).toContain('1180 ft');
    expect(first).toContain('900 ft to 1100 ft');
  });

  it('praises only what was judged', () => {
    expect(firstLookAt(report({}))).toContain('Too little');
    expect(firstLookAt(report({ items: [item('downwind-height', 'downwind', 'green')] }))).toContain(
      'inside',
    );
  });

  it('writes small angles with a decimal', () => {
    expect(valueWords(4.26, DEG)).toBe('4.3°');
    expect(valueWords(null, FT)).toBe('–');
  });
});
