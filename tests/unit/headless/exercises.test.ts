// The command line shows the exercises and judges them: each by its own rows, with its own start, day and orders.
import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { EXERCISES, exerciseNamed } from '../../../src/catalogue.ts';
import type { Result } from '../../../src/formats/result.ts';
import { answer } from '../../../src/headless/main.ts';
import { selects } from '../../../src/lesson/judge/selection.ts';

const run = (...args: string[]) => answer(args, tmpdir());
const fly = (...args: string[]): Result => JSON.parse(run(...args).out) as Result;

describe('the list', () => {
  it('shows every exercise with id and title', () => {
    const { exercises } = JSON.parse(run('--list', '--json').out) as {
      exercises: { id: string; title: string }[];
    };
    expect(exercises).toEqual(EXERCISES.map(({ id, title }) => ({ id, title })));
    expect(exercises.length).toBeGreaterThanOrEqual(24);
  });
});

describe('an exercise', () => {
  it.each(['go-around', 'engine-failure-after-take-off', 'final-and-landing'])(
    '%s is judged by its own rows alone',
    (id) => {
      const result = fly('--exercise', id);
      const { assessed, success } = exerciseNamed(id);
      expect(result.scenario.exercise).toBe(id);
      expect(success).toContain(result.outcome);
      expect(result.items.length).toBeGreaterThan(1);
      for (const item of result.items) expect(selects(assessed, item.id), item.id).toBe(true);
    },
  );

  it('begins where it says, and elsewhere when told so', () => {
    expect(fly('--exercise', 'base-and-final', '--duration', '1').scenario.start.leg).toBe('downwind');
    expect(
      fly('--exercise', 'base-and-final', '--start', 'final', '--duration', '1').scenario.start.leg,
    ).toBe('final');
    expect(
      fly('--exercise', 'base-and-final', '--start', 'line-up', '--duration', '1').scenario.start.at,
    ).toBe('line-up');
  });

  it('has its own day unless one is given, and its own place', () => {
    expect(fly('--exercise', 'crosswind-circuit', '--duration', '1').scenario.weather.windKt).toBeGreaterThan(
      6,
    );
    const given = fly('--exercise', 'crosswind-circuit', '--wind', '040/05', '--duration', '1');
    expect(given.scenario.weather).toMatchObject({ windFromDegM: 40, windKt: 5, gustKt: null });
    expect(fly('--exercise', 'soft-field', '--duration', '1').scenario.aerodrome.runway.surface).toBe(
      'grass',
    );
  });

  it('draws its figures anew from every seed of a batch, and the same ones from the same seed', () => {
    const batch = (): { flights: Result[] } =>
      JSON.parse(run('--exercise', 'go-around', '--repeat', '4', '--duration', '1').out);
    const heights = batch().flights.map(({ scenario }) => JSON.stringify(scenario.task));
    expect(new Set(heights).size).toBe(4);
    expect(batch().flights.map(({ scenario }) => JSON.stringify(scenario.task))).toEqual(heights);
  });

  it('without a name is the normal circuit, calm, from the line-up', () => {
    const { scenario } = fly('--duration', '1');
    expect(scenario).toMatchObject({ exercise: 'normal-circuit', failures: [], circuits: 1 });
    expect(scenario.weather).toMatchObject({ windKt: 0, gustKt: null, turbulence: 'none' });
    expect(scenario.task).toBeUndefined();
  });
});
