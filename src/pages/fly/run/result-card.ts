import { flownTitle } from '../../../flight/outcome-words.ts';
import { LEFT, marksNow, PRACTISED, practised, resultOfFlight } from '../../../flight/result.ts';
import { firstLookAt } from '../../../flight/result-words.ts';
import type { FlownResult, Result } from '../../../formats/result.ts';
import { judgedExerciseOf } from '../../../judged-exercises.ts';
import type { HelpUsed } from '../../../lesson/attempts/attempt.ts';
import { helpWords } from '../../../lesson/attempts/help-words.ts';
import { wordsFor } from '../../../lesson/judge/judge.ts';
import type { LegMarks } from '../../../lesson/judge/leg-marks.ts';
import { verdictOf } from '../../../lesson/judge/verdict.ts';
import { flownPath } from './flown-path.ts';
import type { ReadyFlight } from './ready.ts';
import type { ResultCard } from './shown-result.ts';

/** Whether what its exercise is for has been flown, where that is not a whole flight. */
export const isPractised = (flight: ReadyFlight): boolean =>
  practised(flight, judgedExerciseOf(flight.scenario));

/** The legs of this circuit that are over, as they will stand in the result. */
export const marksOfLegs = (flight: ReadyFlight, watchedS: number): readonly LegMarks[] =>
  marksNow(flight, judgedExerciseOf(flight.scenario), watchedS);

/** What came of the flight, as it is kept and as it is shown. */
export const resultHere = (flight: ReadyFlight, watchedS: number): FlownResult => {
  const unended = isPractised(flight) ? PRACTISED : LEFT;
  const result: Result = resultOfFlight(flight, judgedExerciseOf(flight.scenario), watchedS, unended);
  const { scenario: _, model_version: __, ...flown } = result;
  return flown;
};

/** The flight as a card. */
export const cardOf = (flight: ReadyFlight, help: HelpUsed): ResultCard => {
  const result = resultHere(flight, help.watchedS);
  const exercise = judgedExerciseOf(flight.scenario);
  return {
    result,
    firstLook: firstLookAt(result),
    verdict: exercise && verdictOf(exercise, result.outcome, result.why, result),
    exercise: exercise ? flownTitle(exercise.title, exercise.id, flight.scenario.start.leg) : '',
    advice: [...new Set(result.items.map(wordsFor).filter((words) => words !== ''))],
    judgedBy: flight.limits.title,
    drawn: flownPath(flight.plan, flight.model.runway, flight.trail),
    help: helpWords(help),
  };
};
