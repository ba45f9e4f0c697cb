import { DEMO, EXERCISES, exerciseNamed } from '../catalogue.ts';
import { exerciseScenario } from '../lesson/exercise-scenario.ts';
import { MODEL_VERSION, type Scenario } from '../simulation/scenario.ts';
import { chosen, everyAerodrome, everyAeroplane } from './fly/choices.ts';
import { weatherOf, withProcedures } from './fly/scenario-of-settings.ts';
import { handOver } from './hand-over.ts';
import { goTo } from './route.ts';
import { useStore } from './store.ts';

/** A seed of its own for every attempt at an exercise. */
const anySeed = (): number => Math.floor(Math.random() * 4294967296);

/**
 * Lays an exercise ready, with the aeroplane and the aerodrome of the set-up, and turns to the flying page; in the
 * exercise's own weather, drawn anew, or in that of the set-up.
 */
export const train = (exerciseId: string, inOwnDay = false): void => {
  const id = EXERCISES.some((exercise) => exercise.id === exerciseId) ? exerciseId : DEMO.exercise;
  const exercise = exerciseNamed(id);
  const { settings } = useStore.getState();
  const aerodrome = chosen(everyAerodrome(), exercise.aerodrome ?? settings.aerodrome);
  const scenario = exerciseScenario(
    exercise,
    chosen(everyAeroplane(), settings.aeroplane),
    aerodrome,
    anySeed(),
    {
      rudderAssist: settings.rudderAssist,
      ...(inOwnDay && { weather: weatherOf(settings, aerodrome) }),
    },
  );
  flyAgain(withProcedures(scenario, settings));
};

/** The same flight from its beginning. */
export const flyAgain = (scenario: Scenario): void => {
  handOver({ kind: 'anew', scenario: { ...scenario, modelVersion: MODEL_VERSION } });
  goTo('fly');
};
