// A rule is one row (design/architecture.md, Turn two): a row added in one place, below, and nowhere else is found
// wherever a rule shows: live marks, coach, result, debrief, logbook, tolerances, exercises, command line.
import { tmpdir } from 'node:os';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { exerciseNamed } from '../../../src/exercises.ts';
import { firstLookAt } from '../../../src/flight/result-words.ts';
import { rowOf } from '../../../src/formats/attempt.ts';
import type { Result } from '../../../src/formats/result.ts';
import { answer } from '../../../src/headless/main.ts';
import { practiseNext } from '../../../src/lesson/attempts/practise.ts';
import { itemTrends } from '../../../src/lesson/attempts/trends.ts';
import { beginCoach, coach } from '../../../src/lesson/coach/coach.ts';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { limitsOf } from '../../../src/lesson/judge/edit-tolerances.ts';
import { itemSentence, itemTitle, partOf, unitOf } from '../../../src/lesson/judge/item-words.ts';
import { measuresOf } from '../../../src/lesson/judge/judge.ts';
import { type LegMarks, legMarks } from '../../../src/lesson/judge/leg-marks.ts';
import type { ItemReport, Report } from '../../../src/lesson/judge/report.ts';
import { DEFAULT_TOLERANCES, LIMIT_TITLES, TOLERANCE_SETS } from '../../../src/lesson/judge/tolerances.ts';
import { toleranceWords, valueWords } from '../../../src/lesson/judge/value-words.ts';
import { verdictOf } from '../../../src/lesson/judge/verdict.ts';
import { lookedAt } from '../../../src/pages/exercises/looked-at.ts';
import { exerciseFor } from '../../../src/pages/logbook/trained-by.ts';
import { bodyOf, headNamed } from '../../support/attempts.ts';
import { flyWithProcedures } from '../../support/procedures.ts';

vi.mock('../../../src/lesson/judge/rules/circuit.ts', async (original) => {
  const { CIRCUIT_RULES } = await original<typeof import('../../../src/lesson/judge/rules/circuit.ts')>();
  const { practice } = await import('../../../src/lesson/judge/limit.ts');
  const { atMost, rule } = await import('../../../src/lesson/judge/rule.ts');
  const { phrased } = await import('../../../src/lesson/judge/value-words.ts');
  const { meanOf } = await import('../../../src/lesson/measure.ts');
  const { lastStretch } = await import('../../../src/lesson/watch/facts.ts');
  const thirst = rule({
    id: 'downwind-thirst',
    leg: 'downwind',
    name: 'thirst',
    sides: { high: 'too thirsty' },
    measures: 'mean throttle on downwind, in cups',
    unit: phrased('cups', ' cups an hour'),
    limits: { thirstCups: { title: 'thirst, cups', ...practice(0, 50, 'fifty cups') } },
    say: { high: 'Thirsty on downwind: less throttle keeps it in the tank.' },
    trainedBy: 'glide-approach',
    part: 'Approach',
    good: 40,
    bad: 100,
    measure: (c) => {
      const leg = lastStretch(c, 'downwind');
      const mean = leg === null ? null : meanOf(leg.throttle);
      return leg === null ? undefined : mean === null ? null : 100 * mean;
    },
    against: (_, { thirstCups }) => atMost(0, thirstCups),
    live: {
      settleS: 5,
      rank: 2,
      value: ({ s }) => 100 * s.throttle,
      say: { high: 'It is drinking now: throttle back.' },
    },
  });
  return { CIRCUIT_RULES: [...CIRCUIT_RULES, thirst] };
});

const ID = 'downwind-thirst';
const thirstOf = (items: readonly ItemReport[]): ItemReport | undefined => items.find(({ id }) => id === ID);

describe('a rule added as one row', () => {
  const said: string[] = [];
  let marks: readonly LegMarks[] = [];
  let report: Report;
  let item: ItemReport;

  beforeAll(() => {
    const memory = beginCoach();
    const { m, lesson } = flyWithProcedures({
      start: 'downwind',
      seconds: 110,
      hands: (s, controls) => {
        if (s.timeS < 60) controls.throttle = 1;
      },
      beside: ({ m: now, lesson: asked, s }) => {
        const context = { m: now, lesson: asked, s, limits: DEFAULT_TOLERANCES };
        const words = coach(memory, { ...context, teaching: 'power-for-sink' }, 'reminded', null);
        if (words !== null) said.push(words);
        if (now.legs.leg === 'base') marks = legMarks(assess(now, asked));
      },
    });
    report = assess(m, lesson);
    item = thirstOf(report.items) as ItemReport;
  });

  it('is said by the coach while it lasts, in the words of the row', () => {
    expect(said).toContain('It is drinking now: throttle back.');
  });

  it('is marked on the card once its leg is over', () => {
    const downwind = marks.find(({ leg }) => leg === 'downwind');
    expect(downwind?.marks).toContainEqual({ title: 'Downwind: thirst', band: item.band });
  });

  it('stands in the result, with its sentence and what to say to it', () => {
    expect(item).toMatchObject({ circuit: 1, leg: 'downwind', unit: 'cups', high: 50, band: 'red' });
    const sentence = `Downwind: thirst was ${valueWords(item.value, unitOf(item))}; the tolerance is at most 50 cups an hour.`;
    expect(itemSentence(item)).toBe(sentence);
    expect(firstLookAt({ ...report, outcome: 'stopped', safety: [], go_arounds: [], items: [item] })).toBe(
      sentence,
    );
    expect(verdictOf({ success: ['stopped'] }, 'stopped', '', { ...report, safety: [] }).against).toContain(
      `${sentence} Thirsty on downwind: less throttle keeps it in the tank.`,
    );
  });

  it('stands in the list of the debrief, under its part, with its measure and tolerance', () => {
    expect([itemTitle(item), partOf(item)]).toEqual(['Downwind: thirst', 'Approach']);
    expect(measuresOf(item.id)).toBe('mean throttle on downwind, in cups');
    expect(toleranceWords(item.target, item.low, item.high, unitOf(item))).toBe('at most 50');
  });

  it('stands in the logbook, as a trend and as what to practise next, with what trains it', () => {
    const body = bodyOf(1);
    const result = { ...body.result, ...report, outcome: 'stopped', items: [item], safety: [] } as const;
    const kept = { ...body, result: { ...result, go_arounds: [] } };
    const rows = ['a', 'b', 'c'].map((id) => rowOf(headNamed(id), kept, 1));
    const [trend] = itemTrends(rows);
    expect(trend).toMatchObject({ id: ID, unit: 'cups', counts: { green: 0, amber: 0, red: 3 } });
    expect(trend && itemTitle(trend)).toBe('Downwind: thirst');
    const next = practiseNext(rows);
    expect(next?.what).toBe('Practise downwind: thirst.');
    expect(next?.why).toContain('mostly too thirsty');
    expect(next && exerciseFor(next, '')).toBe('glide-approach');
  });

  it('has its limit in every set of tolerances, with its name, to be changed like any other', () => {
    expect(LIMIT_TITLES.thirstCups).toBe('thirst, cups');
    for (const { allowed } of TOLERANCE_SETS) expect(allowed.thirstCups).toMatchObject({ above: 50 });
    const own = limitsOf({ set: DEFAULT_TOLERANCES.id, changed: { thirstCups: { below: 0, above: 120 } } });
    expect(own.allowed.thirstCups).toMatchObject({ above: 120, sure: 'own' });
  });

  it('is looked at by the exercises that look at its leg, and says so', () => {
    const looked = lookedAt(exerciseNamed('downwind-and-checks'));
    expect(looked.find((line) => line.startsWith('downwind:'))).toContain('thirst');
    expect(lookedAt(exerciseNamed('short-field')).join()).not.toContain('thirst');
  });

  it('stands in the result of the command line', () => {
    const { code, out } = answer(['--exercise', 'downwind-and-checks'], tmpdir());
    expect(code).toBe(0);
    expect(thirstOf((JSON.parse(out) as Result).items)).toMatchObject({
      circuit: 1,
      unit: 'cups',
      source: 'common practice: fifty cups',
    });
  });
});
