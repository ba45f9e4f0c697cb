import { type Model, prepare } from '../simulation/model.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { exercisesNow } from './exercises-room.ts';
import { scenarioOf } from './fly/sheets/scenario-of-settings.ts';
import type { Settings } from './settings.ts';

/**
 * The flight that the settings ask for, an exercise or the circuit of the set-up; what is briefed and what is flown.
 * Throws an Error sentence when there is none.
 */
export const chosenFlight = (settings: Settings): { readonly scenario: Scenario; readonly model: Model } => {
  if (settings.exercise === '') return scenarioOf(settings);
  const exercises = exercisesNow();
  if (exercises === null) throw new Error('the exercises have not been fetched yet');
  const exercise = exercises.exerciseOfSettings(settings);
  if (exercise === null) return scenarioOf(settings);
  const scenario = exercises.exerciseFlight(exercise, settings);
  return { scenario, model: prepare(scenario) };
};
