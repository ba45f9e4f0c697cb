import { assess } from '../lesson/judge/assess.ts';
import { type Ending, endingOf } from '../lesson/judge/outcome.ts';
import { EMPTY_REPORT, type Outcome, type Report } from '../lesson/judge/report.ts';
import type { ToleranceSet } from '../lesson/judge/tolerances.ts';
import type { Lesson } from '../lesson/lesson.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import { MODEL_VERSION, type Scenario } from '../simulation/scenario.ts';

/** The result file. Every key is always there; null where it does not apply. */
export interface Result extends Report {
  readonly model_version: number;
  readonly scenario: Scenario;
  readonly outcome: Outcome;
  readonly why: string;
  readonly flight_s: number;
}

/** What a flight came to, without what its recording already says. */
export type FlownResult = Omit<Result, 'scenario' | 'model_version'>;

/** Keys in the order of the contract. */
const ordered = (
  scenario: Scenario,
  outcome: Outcome,
  why: string,
  flightS: number,
  report: Report,
): Result => ({
  model_version: MODEL_VERSION,
  scenario,
  outcome,
  why,
  flight_s: Math.round(flightS * 1000) / 1000,
  legs: report.legs,
  turns: report.turns,
  gates: report.gates,
  go_arounds: report.go_arounds,
  touchdowns: report.touchdowns,
  stop: report.stop,
  ran_off: report.ran_off,
  items: report.items,
  safety: report.safety,
  causes: report.causes,
});

/** What came of a flight that was flown; `unended` where nothing else has ended it. */
export const resultOf = (
  scenario: Scenario,
  lesson: Lesson,
  memory: LessonMemory,
  flightS: number,
  unended: Ending,
  limits?: ToleranceSet,
): Result => {
  const ending = endingOf(memory, lesson) ?? unended;
  return ordered(scenario, ending.outcome, ending.why, flightS, assess(memory, lesson, limits));
};

/** A flight that was not begun, and why. */
export const refusedResult = (scenario: Scenario, why: string): Result =>
  ordered(scenario, 'refused', why, 0, EMPTY_REPORT);
