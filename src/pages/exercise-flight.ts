import { asTaught, withCircuit } from '../circuit/brief/custom.ts';
import { EXERCISES } from '../exercises.ts';
import type { Exercise } from '../lesson/exercises/exercise.ts';
import { exerciseScenario } from '../lesson/exercises/exercise-scenario.ts';
import { allowsOwnDay } from '../lesson/exercises/own-day.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { chosen, everyAerodrome, everyAeroplane } from './fly/sheets/choices.ts';
import { weatherOf, withProcedures } from './fly/sheets/scenario-of-settings.ts';
import { circuitOptions, type Settings, taughtOf } from './settings.ts';

export { takesAnyAir } from '../lesson/exercises/own-day.ts';
export { asFlown } from './as-flown.ts';

/** The exercise that the settings name; null: none, or one that there is no more. */
export const exerciseOfSettings = ({ exercise }: Pick<Settings, 'exercise'>): Exercise | null =>
  EXERCISES.find(({ id }) => id === exercise) ?? null;

/** Where it is flown: an exercise may want its own aerodrome. */
const placeOf = (exercise: Exercise, settings: Settings) => {
  const place = chosen(everyAerodrome(), exercise.aerodrome ?? settings.aerodrome);
  // The chosen circuit belongs to the chosen aerodrome, and an exercise may bring its own
  const chosenHere = exercise.aerodrome === undefined && exercise.circuit === undefined;
  if (!chosenHere) return place;
  return withCircuit(asTaught(place, taughtOf(settings)), circuitOptions(settings.circuit));
};

/**
 * The flight of an exercise as the settings have it: drawn from its seed, so that the brief, the flight and the same
 * flight after a reload are one. Throws an Error sentence where it cannot be planned.
 */
export const exerciseFlight = (exercise: Exercise, settings: Settings): Scenario => {
  const place = placeOf(exercise, settings);
  const inMyWeather = settings.inMyWeather && allowsOwnDay(exercise);
  const ends = place.runway.ends.map((end) => end.designator);
  const scenario = exerciseScenario(
    exercise,
    chosen(everyAeroplane(), settings.aeroplane),
    place,
    settings.exerciseSeed,
    {
      rudderAssist: settings.rudderAssist,
      ...(inMyWeather && { weather: weatherOf(settings, place) }),
      ...(inMyWeather && ends.includes(settings.runway) && { runway: settings.runway }),
    },
  );
  return withProcedures(scenario, settings);
};
