// Every exercise from the command line (design/headless.md; issue "The lesson", 8): it is listed, begins where its file
// says, has every key of the result, and is judged by its own rows and sources; what is wrong is one sentence.
import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { EXERCISES } from '../../../src/catalogue.ts';
import type { Result } from '../../../src/formats/result.ts';
import { answer } from '../../../src/headless/main.ts';
import { selects } from '../../../src/lesson/judge/selection.ts';

const run = (...args: string[]) => answer(args, tmpdir());

// Legs, outcomes and keys as the contract lists them
const LEGS =
  'line-up take-off-roll upwind turn-to-crosswind crosswind turn-to-downwind downwind turn-to-base base turn-to-final final hold-off landing-roll stopped go-around left-the-circuit crashed'.split(
    ' ',
  );
const OUTCOMES =
  'stopped rejected-take-off landed-out ran-off crashed loss-of-control left-the-circuit refused time-up'.split(
    ' ',
  );
const ITEM_KEYS = ['band', 'circuit', 'high', 'id', 'leg', 'low', 'source', 'target', 'unit', 'value'];

describe.each(EXERCISES.map((exercise) => [exercise.id, exercise] as const))(
  '--exercise %s',
  (id, exercise) => {
    // The session of six takes four times as long and says the same in two
    const flown = run('--exercise', id, ...(exercise.circuits > 1 ? ['--circuits', '2'] : []));
    const result = JSON.parse(flown.out) as Result;

    it('is flown, ends as the contract says and as the exercise may end', () => {
      expect(flown).toMatchObject({ code: 0, error: '' });
      expect(result.scenario.exercise).toBe(id);
      expect(OUTCOMES).toContain(result.outcome);
      expect(exercise.success).toContain(result.outcome);
      expect(result.why).toMatch(/^[A-Z].*\.$/);
      for (const { leg } of result.legs) expect(LEGS).toContain(leg);
    });

    it('begins on the leg that its file names', () => {
      const { at } = exercise.start;
      const first = result.legs[0]?.leg;
      if (at === 'balloon') expect(['hold-off', 'final', 'go-around']).toContain(first);
      else expect(first === at || (at === 'line-up' && first === 'take-off-roll')).toBe(true);
    });

    it('is judged by its own rows alone, each with all that the contract has', () => {
      expect(result.items.length).toBeGreaterThan(1);
      for (const item of result.items) {
        expect(Object.keys(item).sort()).toEqual(ITEM_KEYS);
        expect(selects(exercise.assessed, item.id), item.id).toBe(true);
        expect(item.source.length).toBeGreaterThan(5);
        expect(['green', 'amber', 'red', 'not-judged']).toContain(item.band);
      }
    });
  },
);

describe('what is wrong', () => {
  it.each([
    [['--exercise', 'loop'], /exercise.*loop/],
    [['--exercise'], /--exercise/],
    [['--exercise', 'go-around', '--aeroplane', 'albatross'], /albatross/],
    [['--exercise', 'go-around', '--runway', '99'], /99/],
    [['--exercise', 'go-around', '--wind', '900/10'], /900/],
    [['--exercise', 'go-around', '--circuits', '0'], /circuits/],
    [['--exercise', 'go-around', '--start', 'sideways'], /sideways/],
    [['--exercise', 'go-around', '--seed', '-1'], /seed/],
    [['--exercise', 'go-around', '--metar', 'XXXX 999999Z'], /./],
  ])('%j is one sentence, with exit code 2, and nothing is written', (args, sentence) => {
    const { code, out, error } = run(...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(error.trimEnd().split('\n')).toHaveLength(1);
    expect(error).toMatch(sentence);
  });
});
