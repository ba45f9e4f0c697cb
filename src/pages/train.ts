import { MODEL_VERSION, type Scenario } from '../simulation/scenario.ts';
import { loadExercises } from './exercises-room.ts';
import { handOver } from './hand-over.ts';
import { alreadyTold } from './parts/fetch-part.ts';
import { goTo } from './route.ts';
import { changeSettings } from './store.ts';

/** A seed of its own for every attempt at an exercise. */
export const anySeed = (): number => Math.floor(Math.random() * 4294967296);

/** Chooses an exercise, drawn anew, in its own weather or in that of the set-up; an unknown one becomes the normal circuit. */
export const chooseExercise = async (exerciseId: string, inMyWeather = false): Promise<void> => {
  const { exerciseOfSettings } = await loadExercises();
  const known = exerciseOfSettings({ exercise: exerciseId }) !== null;
  changeSettings({ exercise: known ? exerciseId : 'normal-circuit', exerciseSeed: anySeed(), inMyWeather });
};

/** The same, and turns to the flying page. */
export const train = (exerciseId: string, inMyWeather = false): void => {
  chooseExercise(exerciseId, inMyWeather).then(() => goTo('fly'), alreadyTold);
};

/** The same flight from its beginning. */
export const flyAgain = (scenario: Scenario): void => {
  handOver({ kind: 'anew', scenario: { ...scenario, modelVersion: MODEL_VERSION } });
  goTo('fly');
};
