import { describe, expect, it } from 'vitest';
import { withDue, withStopId } from '../../../src/formats/earlier-items.ts';
import { asksOf } from '../../../src/lesson/coach/asks.ts';
import { CAUSE_IDS, CAUSE_WORDS } from '../../../src/lesson/judge/cause-words.ts';
import { faultsOf, faultWords } from '../../../src/lesson/judge/first/faults.ts';
import { firstThing } from '../../../src/lesson/judge/first/first-thing.ts';
import { placeOf } from '../../../src/lesson/judge/first/order.ts';
import { STOP_WORDS } from '../../../src/lesson/judge/first/safety-words.ts';
import {
  EMPTY_REPORT,
  type ItemReport,
  type Outcome,
  type Report,
} from '../../../src/lesson/judge/report.ts';
import { RULES } from '../../../src/lesson/judge/rules.ts';
import { SAFETY_STOPS } from '../../../src/lesson/watch/safety.ts';

const item = (id: string, band: ItemReport['band'], value: number, circuit = 1): ItemReport => {
  const rule = RULES.find((each) => each.id === id);
  if (rule === undefined) throw new Error(`first-thing.test: no row ${id}`);
  const { leg, unit } = rule;
  return { id, circuit, leg, value, unit: unit.written, target: 45, low: 40, high: 50, band, source: '' };
};

const looked = (changes: Partial<Report>, outcome: Outcome = 'stopped') => ({
  ...EMPTY_REPORT,
  ...changes,
  outcome,
});

const REDS = { id: 'four-reds', at_s: 90, what: 'all lights red and sinking at 448 ft' };
const BANK = { id: 'bank-low', at_s: 70, what: '67 deg of bank at 440 ft, allowed 40 deg' };

describe('the first thing to speak of', () => {
  it('is the cause, with what it led to after it', () => {
    const first = firstThing(looked({ safety: [REDS], items: [item('base-turn-angle', 'red', 54)] }));
    expect(first?.lead.key).toBe('base-turn-angle:high');
    expect(first?.sentence).toMatch(/^You turned base late: 54°.* Then you came low under four reds\. /);
    expect(first?.under.map(({ key }) => key)).toEqual(['four-reds']);
  });

  it('is no cause that leads the other way: base turned early brings nobody under four reds by itself', () => {
    const early = firstThing(
      looked({
        safety: [BANK],
        items: [item('base-turn-angle', 'red', 30), item('final-lights', 'red', 52)],
      }),
    );
    expect(early?.lead.key).toBe('bank-low');
    const late = firstThing(
      looked({ items: [item('base-turn-angle', 'red', 54), item('float', 'red', 500)] }),
    );
    expect(late?.with).toBeNull();
  });

  it('is what hurt, with the cause after it', () => {
    const touch = { past_threshold_m: -300, centreline_m: 2 } as Report['touchdowns'][number];
    const short = looked(
      { safety: [REDS], touchdowns: [touch], items: [item('base-turn-angle', 'red', 54)] },
      'landed-out',
    );
    expect(firstThing(short)?.sentence).toMatch(
      /^You came down short.*: 300 m before it\. It began when you turned base late/,
    );
    const steep = looked({ safety: [REDS, BANK] });
    expect(firstThing(steep)?.lead.key).toBe('bank-low');
  });

  it('is never amber where something is red: an amber cause stands behind what it led to', () => {
    const first = firstThing(looked({ safety: [REDS], items: [item('base-turn-angle', 'amber', 51)] }));
    expect(first?.lead.key).toBe('four-reds');
    expect(first?.sentence).toContain('It began when you turned base late');
    const beside = looked({
      items: [item('touchdown-sink', 'amber', 60), item('checks-downwind', 'red', 10)],
    });
    expect(firstThing(beside)?.lead.key).toBe('checks-downwind:low');
  });

  it('belongs to its circuit, and says which', () => {
    const first = firstThing(
      looked({ items: [item('base-turn-angle', 'red', 54, 2), item('final-lights', 'red', 30, 1)] }),
    );
    expect(first?.lead.key).toBe('final-lights:low');
    const second = firstThing(looked({ items: [item('base-turn-angle', 'red', 54, 2)] }));
    expect(second?.sentence).toMatch(/^Circuit 2: You turned base late/);
  });

  it('counts each fault once, with what came of it under it', () => {
    const faults = faultsOf(
      looked({
        safety: [REDS],
        items: [
          item('base-turn-angle', 'red', 54),
          item('final-lights', 'red', 30),
          item('final-height', 'red', 30),
          item('touchdown-drift', 'red', 60),
        ],
      }),
    );
    expect(faults.map(({ fault }) => fault.key)).toEqual(['base-turn-angle:high', 'touchdown-drift:high']);
    expect(faults[0]?.under).toHaveLength(3);
    expect(faults.map(faultWords)[0]).toMatch(/With it: you came low under four reds; /);
  });

  it('has words and a place for every safety stop and every cause', () => {
    expect(Object.keys(STOP_WORDS).sort()).toEqual(SAFETY_STOPS.map(({ id }) => id).sort());
    for (const id of [...CAUSE_IDS, ...SAFETY_STOPS.map((stop) => stop.id)])
      expect(placeOf(id), id).toBeGreaterThan(0);
    expect(Object.keys(CAUSE_WORDS).sort()).toEqual([...CAUSE_IDS].sort());
  });

  it('asks for nothing that hurts near the ground', () => {
    const words = [...Object.values(CAUSE_WORDS), ...Object.values(STOP_WORDS)].map(({ next }) => next);
    expect(words.filter((next) => asksOf(next).length > 0)).toEqual([]);
    const near = RULES.filter(
      ({ leg }) => leg === 'final' || leg === 'landing-roll' || leg === 'turn-to-final',
    );
    const said = near.flatMap(({ say }) => [say.low ?? '', say.high ?? '']);
    expect(said.filter((each) => asksOf(each).length > 0 || /hold off longer/i.test(each))).toEqual([]);
  });
});

describe('what an earlier version kept', () => {
  it('gets the ids of its safety stops from their words', () => {
    const stop = (what: string) => withStopId({ at_s: 1, what }).id;
    expect(stop(REDS.what)).toBe('four-reds');
    expect(stop(BANK.what)).toBe('bank-low');
    expect(stop('56 deg of bank in the turn to final, allowed 30 deg')).toBe('bank-final-turn');
    expect(stop('the stall warner sounded at 300 ft')).toBe('warner');
    expect(stop('62 kt at 240 ft: below 1.2 times the stalling speed here, 63 kt')).toBe('slow');
    expect(stop('went on without going around: bounced to 5 ft')).toBe('went-on');
    expect(withStopId({ id: 'slow', what: REDS.what }).id).toBe('slow');
  });

  it('gets what asked for a go-around', () => {
    expect(withDue({ due_at_s: null, why: 'safe, not needed' }).due).toBeNull();
    expect(withDue({ due_at_s: 9, why: 'not stabilised at 300 ft: low' }).due).toBe('gate');
    expect(withDue({ due_at_s: 9, why: 'a go-around was called' }).due).toBe('asked');
  });
});
