// Live and afterwards are one function (design/lesson.md): what a leg shows when it is over is what the result says of it.
import { describe, expect, it } from 'vitest';
import { scenarioPlan } from '../../../src/lesson/exercises/exercise-scenario.ts';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { itemTitle } from '../../../src/lesson/judge/item-words.ts';
import { type LegMarks, legMarks } from '../../../src/lesson/judge/leg-marks.ts';
import type { Band, ItemReport, LegReport } from '../../../src/lesson/judge/report.ts';
import { lessonOfScenario } from '../../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import type { LegName } from '../../../src/lesson/names.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import type { Fold } from '../../../src/session/source.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { STEP_HZ } from '../../../src/simulation/scenario.ts';
import { gustyScenario } from '../../support/attempts.ts';

const leg = (name: LegName, circuit = 1): LegReport => ({
  circuit,
  leg: name,
  from_s: 0,
  to_s: 1,
  height_ft: null,
  ias_kt: null,
  bank_deg: null,
  track_error_m: null,
});

const item = (id: string, on: LegName, band: Band, circuit = 1): ItemReport => ({
  id,
  circuit,
  leg: on,
  value: 1,
  unit: 'ft',
  target: 0,
  low: 0,
  high: 0,
  band,
  source: 'made up for this test',
});

const ITEMS = [
  item('turn-to-downwind-bank', 'turn-to-downwind', 'amber'),
  item('downwind-height', 'downwind', 'green'),
  item('downwind-trim', 'downwind', 'not-judged'),
  item('base-speed', 'base', 'red'),
  item('downwind-height', 'downwind', 'red', 2),
];

describe('the marks of the legs flown so far', () => {
  it('stand under the leg once it is over, its turn included, and leave the present one in peace', () => {
    const legs = [leg('turn-to-downwind'), leg('downwind'), leg('base')];
    expect(legMarks({ legs, items: ITEMS })).toEqual([
      {
        leg: 'downwind',
        marks: [
          { title: 'Turn to downwind: bank', band: 'amber' },
          { title: 'Downwind: height', band: 'green' },
        ],
      },
    ]);
    expect(legMarks({ legs: legs.slice(0, 2), items: ITEMS })[0]?.marks.map(({ band }) => band)).toEqual([
      'amber',
    ]);
  });

  it('begin anew with each circuit', () => {
    const legs = [leg('downwind'), leg('base'), leg('downwind', 2), leg('base', 2)];
    expect(legMarks({ legs, items: ITEMS })).toEqual([
      { leg: 'downwind', marks: [{ title: 'Downwind: height, circuit 2', band: 'red' }] },
    ]);
  });

  it('say nothing before the first leg is over', () => {
    expect(legMarks({ legs: [], items: [] })).toEqual([]);
    expect(legMarks({ legs: [leg('downwind')], items: ITEMS })).toEqual([]);
  });

  it('are, in a gusty circuit, what the result says of the same rows', () => {
    const scenario = { ...gustyScenario(3), start: { at: 'line-up', trimmed: false, leg: null } as const };
    const model = prepare(scenario);
    const plan = scenarioPlan(scenario);
    const lesson = lessonOfScenario(scenario, model.runway, plan, null);
    const folds = [createLessonFold(lesson) as Fold<unknown>];
    const session = createSession([{ scenario, source: createPilot(model, plan), folds }]);
    const memory = () => session.aircraft[0]?.foldMemories[0] as LessonMemory;
    const live = new Map<string, LegMarks>();
    let before = '';
    while (memory().stop === null && session.step < 600 * STEP_HZ) {
      tick(session);
      if (memory().legs.leg === before) continue;
      before = memory().legs.leg;
      for (const marks of legMarks(assess(memory(), lesson))) live.set(marks.leg, marks);
    }
    const { items } = assess(memory(), lesson);
    const bandOf = (title: string) =>
      items.find((each) => each.circuit === 1 && itemTitle(each) === title)?.band;
    const shown = [...live.values()].flatMap(({ marks }) => marks);
    expect(shown.length).toBeGreaterThan(15);
    expect(shown.map(({ title }) => [title, bandOf(title)])).toEqual(
      shown.map(({ title, band }) => [title, band]),
    );
  });
});
