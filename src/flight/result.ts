import { type Result, resultOf } from '../formats/result.ts';
import type { Exercise } from '../lesson/exercises/exercise.ts';
import { isPractised } from '../lesson/exercises/practised.ts';
import { assess } from '../lesson/judge/assess.ts';
import { type LegMarks, legMarks } from '../lesson/judge/leg-marks.ts';
import type { Ending } from '../lesson/judge/outcome.ts';
import type { ItemReport, Report } from '../lesson/judge/report.ts';
import { ALL_RULES } from '../lesson/judge/rules.ts';
import { selects } from '../lesson/judge/selection.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { flownBy } from '../session/flown-by.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { type Flight, lessonMemory, ownAircraft } from './flight.ts';

/** What of an exercise judges a flight; null: none of the catalogue's, and every row is looked at. */
export type JudgingExercise = Pick<Exercise, 'assessed' | 'doneAfter'> | null;

/**
 * The lesson with the rows that its exercise looks at. Checks, calls and lookout are nobody's to answer for
 * where the model pilot had the aeroplane for some of the time.
 */
export const judged = (lesson: Lesson, exercise: JudgingExercise, watchedS: number): Lesson => {
  const assessed = exercise?.assessed ?? null;
  if (watchedS === 0) return { ...lesson, assessed };
  const left = ALL_RULES.filter(
    ({ id, besideFlying }) => besideFlying !== true && (assessed === null || selects(assessed, id)),
  );
  return { ...lesson, assessed: left.map(({ id }) => id) };
};

/** The legs of this circuit that are over, as they will stand in the result. */
export const marksNow = (flight: Flight, exercise: JudgingExercise, watchedS: number): readonly LegMarks[] =>
  legMarks(assess(lessonMemory(flight), judged(flight.lesson, exercise, watchedS), flight.limits));

/** Whether what its exercise is for has been flown, where that is not a whole flight. */
export const practised = (flight: Flight, exercise: JudgingExercise): boolean =>
  exercise !== null && isPractised(lessonMemory(flight), exercise);

/** Where nothing else has ended it: the leg that the exercise is for was over. */
export const PRACTISED: Ending = { outcome: 'practised', why: 'What was to be practised was flown.' };
export const LEFT: Ending = { outcome: 'time-up', why: 'The flight was left.' };

/** The circuit's stretch of a leg that was over when its pilot took the controls. */
const isBefore = (
  result: Report,
  { circuit, leg }: Pick<ItemReport, 'circuit' | 'leg'>,
  fromS: number,
): boolean => {
  const flown = result.legs.filter((each) => each.circuit === circuit && each.leg === leg);
  return flown.length > 0 && flown.every(({ to_s }) => to_s <= fromS);
};

/** What was judged before somebody took over from the model pilot is nobody's to answer for. */
const theirs = (result: Result, fromS: number): Result => ({
  ...result,
  gates: result.gates.filter(({ at_s }) => at_s === null || at_s >= fromS),
  go_arounds: result.go_arounds.filter((g) => (g.at_s ?? g.due_at_s ?? fromS) >= fromS),
  touchdowns: result.touchdowns.filter(({ at_s }) => at_s >= fromS),
  items: result.items.filter((item) => !isBefore(result, item, fromS)),
  safety: result.safety.filter(({ at_s }) => at_s >= fromS),
  causes: result.causes.filter(({ at_s }) => at_s >= fromS),
});

/** What came of a flight, the one answer for page, logbook and command line; `unended`: where nothing has ended it. */
export const resultOfFlight = (
  flight: Flight,
  exercise: JudgingExercise,
  watchedS: number,
  unended: Ending,
): Result => {
  const result = resultOf(
    flight.scenario,
    judged(flight.lesson, exercise, watchedS),
    lessonMemory(flight),
    flight.session.step / STEP_HZ,
    unended,
    flight.limits,
  );
  const fromS = flownBy(ownAircraft(flight).recorder.recording).theirsFromS ?? 0;
  return fromS > 0 ? theirs(result, fromS) : result;
};
