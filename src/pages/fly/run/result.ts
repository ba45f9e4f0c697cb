import { judgedExerciseOf } from '../../../judged-exercises.ts';
import type { HelpUsed } from '../../../lesson/attempts/attempt.ts';
import { helpWords } from '../../../lesson/attempts/help-words.ts';
import { isPractised } from '../../../lesson/exercises/practised.ts';
import { assess } from '../../../lesson/judge/assess.ts';
import { itemSentence } from '../../../lesson/judge/item-words.ts';
import { wordsFor } from '../../../lesson/judge/judge.ts';
import { type LegMarks, legMarks } from '../../../lesson/judge/leg-marks.ts';
import { endingOf } from '../../../lesson/judge/outcome.ts';
import type { ItemReport, Outcome, Report } from '../../../lesson/judge/report.ts';
import { ALL_RULES, ruleOf } from '../../../lesson/judge/rules.ts';
import { selects } from '../../../lesson/judge/selection.ts';
import { type Verdict, verdictOf } from '../../../lesson/judge/verdict.ts';
import type { Lesson } from '../../../lesson/lesson.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import { type FlownPath, flownPath } from './flown-path.ts';
import { lessonMemory, type ReadyFlight } from './ready.ts';

/** What the result card shows. */
export interface ResultCard {
  readonly outcome: Outcome | 'under-way';
  readonly why: string;
  readonly flightS: number;
  readonly report: Report;
  readonly firstLook: string;
  /** Of the exercise; null where it is none of the catalogue's. */
  readonly verdict: Verdict | null;
  readonly exercise: string;
  /** What is said to rows that left their tolerance. */
  readonly advice: readonly string[];
  /** The set it was judged by. */
  readonly judgedBy: string;
  readonly drawn: FlownPath;
  /** How much help there was. */
  readonly help: string;
}

/** Endings that matter more than any tolerance. */
const ENDED_WORDS: Partial<Readonly<Record<ResultCard['outcome'], string>>> = {
  'ran-off': 'First: keeping straight on the ground. Feet on the runway line until it has stopped.',
  crashed: 'First: how it met the ground. Take it up again half a minute earlier, or go around sooner.',
  'loss-of-control': 'First: speed and balance near the ground. Lower the nose, then roll level.',
};

/** The item to look at first: red before amber, flying before checks, calls and lookout. */
export const firstItemOf = ({ items }: Report): ItemReport | undefined => {
  const flown = items.filter((i) => ruleOf(i.id)?.besideFlying !== true);
  return (
    flown.find((i) => i.band === 'red') ??
    flown.find((i) => i.band === 'amber') ??
    items.find((i) => i.band === 'red') ??
    items.find((i) => i.band === 'amber')
  );
};

/**
 * What to look at first: a safety stop before all, then a gate flown below without being stabilised, then how
 * it ended where that was no landing, then the earliest leg that left its tolerance (an early fault makes the
 * later ones), red before amber, flying before checks, calls and lookout.
 */
export const firstLookAt = (report: Report, outcome?: ResultCard['outcome']): string => {
  const [stop] = report.safety;
  if (stop) return `First: ${stop.what}.`;
  const missed = report.go_arounds.find((g) => g.at_s === null);
  if (missed) return `A go-around was due: ${missed.why}.`;
  const ended = outcome === undefined ? undefined : ENDED_WORDS[outcome];
  if (ended !== undefined) return ended;
  const item = firstItemOf(report);
  if (item) return itemSentence(item);
  return report.items.some((i) => i.band === 'green')
    ? 'Everything that was judged lies inside its tolerance. Fly it again to make it a habit.'
    : 'Too little was flown to judge.';
};

/**
 * The lesson with the rows that its exercise looks at. Checks, calls and lookout are nobody's to answer for
 * where the model pilot had the aeroplane.
 */
export const judged = (
  { lesson, scenario }: Pick<ReadyFlight, 'lesson' | 'scenario'>,
  watchedS: number,
): Lesson => {
  const assessed = judgedExerciseOf(scenario)?.assessed ?? null;
  if (watchedS === 0) return { ...lesson, assessed };
  const left = ALL_RULES.filter(
    ({ id, besideFlying }) => besideFlying !== true && (assessed === null || selects(assessed, id)),
  );
  return { ...lesson, assessed: left.map(({ id }) => id) };
};

/** The legs of this circuit that are over, as they will stand in the result. */
export const marksNow = (flight: ReadyFlight, watchedS: number): readonly LegMarks[] =>
  legMarks(assess(lessonMemory(flight), judged(flight, watchedS), flight.limits));

/** Whether what its exercise is for has been flown, where that is not a whole flight. */
export const practised = (flight: ReadyFlight): boolean => {
  const exercise = judgedExerciseOf(flight.scenario);
  return exercise !== null && isPractised(lessonMemory(flight), exercise);
};

const endOf = (flight: ReadyFlight): Pick<ResultCard, 'outcome' | 'why'> => {
  const ending = endingOf(lessonMemory(flight), flight.lesson);
  if (ending !== null) return ending;
  return practised(flight)
    ? { outcome: 'practised', why: 'What was to be practised has been flown; it need not go on.' }
    : { outcome: 'under-way', why: 'The flight still goes on.' };
};

const verdictNow = (flight: ReadyFlight, end: Pick<ResultCard, 'outcome' | 'why'>, report: Report) => {
  const exercise = judgedExerciseOf(flight.scenario);
  if (exercise === null || end.outcome === 'under-way') return null;
  return verdictOf(exercise, end.outcome, end.why, report);
};

/** The flight so far as a card: the same assessment as everywhere. */
export const resultOf = (flight: ReadyFlight, help: HelpUsed): ResultCard => {
  const memory = lessonMemory(flight);
  const report = assess(memory, judged(flight, help.watchedS), flight.limits);
  const end = endOf(flight);
  return {
    ...end,
    flightS: flight.session.step / STEP_HZ,
    report,
    firstLook: firstLookAt(report, end.outcome),
    verdict: verdictNow(flight, end, report),
    exercise: judgedExerciseOf(flight.scenario)?.title ?? '',
    advice: [...new Set(report.items.map(wordsFor).filter((words) => words !== ''))],
    judgedBy: flight.limits.title,
    drawn: flownPath(flight.plan, flight.model.runway, flight.trail),
    help: helpWords(help),
  };
};
