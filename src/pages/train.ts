import { MODEL_VERSION, type Scenario } from '../simulation/scenario.ts';
import { loadExercises } from './exercises-room.ts';
import { handOver } from './hand-over.ts';
import { alreadyTold } from './parts/fetch-part.ts';
import { goTo } from './route.ts';
import { changeSettings, useStore } from './store.ts';

/** A seed of its own for every attempt at an exercise. */
export const anySeed = (): number => Math.floor(Math.random() * 4294967296);

/**
 * Chooses an exercise, drawn anew, in its own weather or in that of the set-up; an unknown one becomes the normal
 * circuit. `after`: a flight whose place, aeroplane and air it is to have, where the exercise allows it.
 */
export const chooseExercise = async (
  exerciseId: string,
  inMyWeather = false,
  after: Scenario | null = null,
): Promise<void> => {
  const { exerciseOfSettings, asFlown, takesAnyAir } = await loadExercises();
  const exercise = exerciseOfSettings({ exercise: exerciseId });
  changeSettings({
    ...(after !== null && asFlown(after, useStore.getState().settings)),
    exercise: exercise === null ? 'normal-circuit' : exerciseId,
    exerciseSeed: anySeed(),
    inMyWeather: inMyWeather || (after !== null && (exercise === null || takesAnyAir(exercise))),
  });
};

/** The same, and turns to the flying page. */
export const train = (exerciseId: string, inMyWeather = false): void => {
  chooseExercise(exerciseId, inMyWeather).then(() => goTo('fly'), alreadyTold);
};

/** The same after a flight that showed what is to be trained: there, in that aeroplane, in that air. */
export const trainAfter = (exerciseId: string, after: Scenario | null): void => {
  chooseExercise(exerciseId, false, after).then(() => goTo('fly'), alreadyTold);
};

/** The same flight from its beginning. */
export const flyAgain = (scenario: Scenario): void => {
  handOver({ kind: 'anew', scenario: { ...scenario, modelVersion: MODEL_VERSION } });
  goTo('fly');
};
