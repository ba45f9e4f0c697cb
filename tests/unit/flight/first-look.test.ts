import { describe, expect, it } from 'vitest';
import { firstLookAt } from '../../../src/flight/result-words.ts';
import {
  EMPTY_REPORT,
  type ItemReport,
  type Outcome,
  type Report,
} from '../../../src/lesson/judge/report.ts';
import { DEG, FT, valueWords } from '../../../src/lesson/judge/value-words.ts';

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

const report = (changes: Partial<Report>, outcome: Outcome = 'stopped') => ({
  ...EMPTY_REPORT,
  ...changes,
  outcome,
});

describe('what to look at first (lesson.md: the root, not the symptom)', () => {
  it('is a safety stop before everything that is outside', () => {
    const first = firstLookAt(
      report({
        items: [item('downwind-height', 'downwind', 'red')],
        safety: [{ id: 'warner', at_s: 3, what: 'the stall warner sounded' }],
      }),
    );
    expect(first).toContain('stall warner');
  });

  it('is the worst of the safety stops, not the earliest', () => {
    const safety = [
      { id: 'four-reds', at_s: 3, what: 'all lights red and sinking at 300 ft' },
      { id: 'bank-low', at_s: 9, what: '67 deg of bank at 440 ft, allowed 40 deg' },
    ];
    expect(firstLookAt(report({ safety }))).toContain('67 deg of bank');
  });

  it('is how it ended before any safety stop: short in a field leads, but not where the engine had stopped', () => {
    const safety = [{ id: 'four-reds', at_s: 3, what: 'all lights red and sinking at 300 ft' }];
    expect(firstLookAt(report({ safety }, 'landed-out'))).toContain('no runway');
    const items = [item('engine-failure-speed', 'final', 'green')];
    expect(firstLookAt(report({ items }, 'landed-out'))).toContain('inside');
  });

  it('is a go-around that was due and not flown, before any item', () => {
    const due = {
      at_s: null,
      height_ft: null,
      due_at_s: 240,
      why: 'not stabilised at 300 ft',
      due: 'gate',
      circuit: 1,
      gate_ft: 300,
    } as const;
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
    expect(first).toMatch(/^You flew downwind too high: /);
    expect(first).toContain('1180 ft');
    expect(first).toContain('900 ft to 1100 ft');
  });

  it('is how it ended, where that was no landing, before any item', () => {
    const items = [item('downwind-height', 'downwind', 'red')];
    expect(firstLookAt(report({ items }, 'ran-off'))).toContain('at its side');
    expect(firstLookAt(report({ items }, 'crashed'))).toContain('met the ground');
    expect(firstLookAt(report({ items }, 'time-up'))).toMatch(/^You flew downwind too high/);
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
