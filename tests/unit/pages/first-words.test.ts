import { describe, expect, it } from 'vitest';
import { flownTitle } from '../../../src/flight/outcome-words.ts';
import { firstLookAt } from '../../../src/flight/result-words.ts';
import { rowOf } from '../../../src/formats/attempt.ts';
import { EMPTY_REPORT, type ItemReport, type Report } from '../../../src/lesson/judge/report.ts';
import { asksOwnView, debriefWords } from '../../../src/pages/debrief/first-words.ts';
import type { RootResult } from '../../../src/study/root/result.ts';
import { bodyOf, headNamed } from '../../support/attempts.ts';

const hard: ItemReport = {
  id: 'touchdown-sink',
  circuit: 1,
  leg: 'landing-roll',
  value: 480,
  unit: 'ft/min',
  target: 100,
  low: null,
  high: 240,
  band: 'red',
  source: '',
};
const flown = (changes: Partial<Report>) => ({
  ...EMPTY_REPORT,
  outcome: 'stopped' as const,
  why: '',
  flight_s: 1,
  ...changes,
});
const root = (kind: RootResult['kind'], sentence: string): RootResult => ({
  kind,
  circuit: 1,
  sentence,
  why: 'The approach was inside its tolerances at every gate.',
  change: null,
  together: [],
  branch: null,
  branchFromS: null,
  before: null,
  after: null,
  afterGate: null,
  nextTime: null,
  departures: [],
  flightsFlown: 1,
});

describe('the first line of the debrief', () => {
  it('is the line of the card, whatever the search has found', () => {
    const report = flown({ items: [hard] });
    const roots = [null, root('one-change', 'Turn base 7 s later.'), root('nothing-wrong', 'Nothing.')];
    for (const found of roots) expect(debriefWords(report, found).first).toBe(firstLookAt(report));
    expect(debriefWords(report, roots[1] ?? null).after[0]).toBe('Turn base 7 s later.');
  });

  it('has no praise under it where something was outside', () => {
    const nothing = root('nothing-wrong', 'Nothing before the gate needs changing.');
    for (const band of ['red', 'amber'] as const)
      expect(debriefWords(flown({ items: [{ ...hard, band }] }), nothing).after.join(' ')).not.toMatch(
        /nothing/i,
      );
    expect(debriefWords(flown({}), nothing).after[0]).toMatch(/^Nothing before the gate/);
  });

  it('is kept for the logbook', () => {
    const body = bodyOf(1);
    const result = { ...body.result, ...flown({ items: [hard] }) };
    expect(rowOf(headNamed('a'), { ...body, result }, 1).first).toBe(firstLookAt(result));
  });
});

describe('what a flight is called and asked', () => {
  it('is no circuit where it began on a leg', () => {
    expect(flownTitle('Normal circuit', 'normal-circuit', 'line-up')).toBe('Normal circuit');
    expect(flownTitle('Normal circuit', 'normal-circuit', 'final')).toBe('From final');
    expect(flownTitle('Normal circuit', 'normal-circuit', undefined)).toBe('Normal circuit');
    expect(flownTitle('Late base turn', 'late-base-turn', 'downwind')).toBe('Late base turn');
  });

  it('is nothing about final where none was flown', () => {
    expect(asksOwnView(flown({}))).toBe(false);
  });
});
