// Every exercise as the model pilot flies it, from start to stop: it ends as it may, without a safety stop, and
// nothing that is looked at is red (issue "The lesson", 8). Two seeds each, and the session of six circuits once.
import { describe, expect, it } from 'vitest';
import { EXERCISES } from '../../src/catalogue.ts';
import { flyExercise } from '../support/fly-exercise.ts';

const flights = EXERCISES.flatMap(({ id, circuits }) =>
  (circuits > 1 ? [1] : [1, 2]).map((seed) => [id, seed] as const),
);

describe('the model pilot passes', () => {
  it.each(flights)('%s, seed %i', (id, seed) => {
    const { result, verdict, exercise } = flyExercise(id, seed);
    expect(verdict.against, result.why).toEqual([]);
    expect(verdict.passed).toBe(true);
    // Something was judged at all, and nothing that the exercise leaves out
    const judged = result.items.filter((item) => item.band !== 'not-judged');
    expect(judged.length).toBeGreaterThan(1);
    expect(exercise.success).toContain(result.outcome);
  });
});

describe('what an exercise is about happens', () => {
  it('the take-off is called off on the roll and ends on the runway', () => {
    const { result } = flyExercise('abandoned-take-off', 3);
    expect(result.outcome).toBe('rejected-take-off');
    expect(result.items.find(({ id }) => id === 'stop-answer')?.value).toBeLessThan(4);
    expect(result.legs.some(({ leg }) => leg === 'upwind')).toBe(false);
  });

  it('the go-around comes below the height it was called at and is answered', () => {
    const { result, scenario } = flyExercise('go-around', 4);
    const [said] = scenario.task?.instructions ?? [];
    const [flown] = result.go_arounds;
    expect(said?.what === 'go-around' && (flown?.height_ft ?? 999) < said.atHeightFt).toBe(true);
    expect(flown?.why).toBe('a go-around was called');
    expect(result.touchdowns).toHaveLength(1);
  });

  it('the engine stops, and the landing is ahead, within 30 degrees, off the runway', () => {
    const { result } = flyExercise('engine-failure-after-take-off', 5);
    expect(result.outcome).toBe('landed-out');
    expect(result.items.find(({ id }) => id === 'engine-failure-turn')?.band).toBe('green');
    expect(result.items.find(({ id }) => id === 'engine-failure-speed')?.band).toBe('green');
  });

  it('the orbit goes once round away from the runway, and downwind stays downwind', () => {
    const orbiting = [4, 5, 6, 7, 8, 9, 10].map((seed) => flyExercise('extend-orbit-number-two', seed));
    const orbit = orbiting.find(({ scenario }) => scenario.task?.instructions[0]?.what === 'orbit');
    expect(orbit?.result.items.find(({ id }) => id === 'orbit-turned')?.band).toBe('green');
    expect(orbit?.result.legs.filter(({ leg }) => leg === 'downwind')).toHaveLength(1);
    const extended = orbiting.find(({ scenario }) => scenario.task?.instructions[0]?.what === 'extend');
    expect(extended?.result.items.find(({ id }) => id === 'extended-by')?.band).toBe('green');
  });

  it('six circuits leave six touchdown points and gates, while the wind goes round', () => {
    const { result, scenario } = flyExercise('touch-and-go-session', 2);
    expect(result.touchdowns).toHaveLength(6);
    expect(result.touchdowns.map(({ circuit }) => circuit)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(result.gates.filter(({ height_ft }) => height_ft === 200)).toHaveLength(6);
    expect(result.items.find(({ id }) => id === 'three-in-a-row')?.value).toBeGreaterThanOrEqual(3);
    expect(scenario.weather.driftTo?.overS).toBeGreaterThan(1000);
  });
});
