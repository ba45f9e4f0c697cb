import { exerciseOf } from '../../exercises.ts';
import { assess } from '../../lesson/assess.ts';
import type { Lesson } from '../../lesson/lesson.ts';
import { endingOf } from '../../lesson/outcome.ts';
import type { ItemReport, Outcome, Report } from '../../lesson/report.ts';
import { STEP_HZ } from '../../simulation/scenario.ts';
import { fixed } from '../../units/format.ts';
import { legWords } from './card-data.ts';
import { type FlownPath, flownPath } from './flown-path.ts';
import { lessonMemory, type ReadyFlight } from './ready.ts';

/** What the result card shows. */
export interface ResultCard {
  readonly outcome: Outcome | 'under-way';
  readonly why: string;
  readonly flightS: number;
  readonly report: Report;
  readonly firstLook: string;
  readonly drawn: FlownPath;
  /** How much help there was. */
  readonly help: string;
}

const MEASURES: Readonly<Record<string, string>> = {
  height: 'height',
  speed: 'speed',
  track: 'track from the planned one',
  spacing: 'spacing',
  bank: 'largest bank',
  angle: 'angle behind the wing',
  centreline: 'distance from the centreline',
  'base-turn-angle': 'threshold behind the wing',
  'final-overshoot': 'overshoot of the centreline',
  'touchdown-point': 'touchdown past the specified point',
  'touchdown-sink': 'sink at touchdown',
  'touchdown-centreline': 'touchdown from the centreline',
  'touchdown-drift': 'drift at touchdown',
  'touchdown-crab': 'crab at touchdown',
  'touchdown-bounces': 'bounces',
  'stop-remaining': 'runway left',
  'checks-before-take-off': 'check before take-off, done',
  'checks-after-take-off': 'check after take-off, done',
  'checks-downwind': 'check, done',
  'checks-final': 'check, done',
  'checks-go-around': 'order of the go-around, done',
  'checks-after-landing': 'check after landing, done',
  'heads-in-height': 'height lost with heads in',
  'heads-in-heading': 'heading lost with heads in',
  'lookout-crosswind': 'lookout before crosswind',
  'lookout-downwind': 'lookout before downwind',
  'lookout-base': 'lookout before base',
  'lookout-final': 'lookout before final',
  calls: 'calls made in place',
  'read-back': 'read-back, longest',
  clearance: 'runway used without a clearance',
  'spacing-ahead': 'nearest to another aeroplane',
  'brakes-found': 'brakes found without pressure',
  subscale: 'altimeter subscale off',
};

/** "downwind-height" in words: "Downwind: height". */
export const itemWords = (item: ItemReport): string => {
  const id = item.id.replace(/-\d+$/, '');
  const rest = id.startsWith(`${item.leg}-`) ? id.slice(item.leg.length + 1) : id;
  return `${legWords(item.leg)}: ${MEASURES[rest] ?? rest.replaceAll('-', ' ')}`;
};

const UNITS: Readonly<Record<string, string>> = { deg: '°', ft: ' ft', kt: ' kt', m: ' m', fpm: ' ft/min' };

/** A value with its unit: "640 ft". */
export const withUnit = (value: number | null, unit: string): string => {
  if (value === null) return '–';
  const places = unit === 'deg' && Math.abs(value) < 10 ? 1 : 0;
  return `${fixed(value, places)}${UNITS[unit] ?? ` ${unit}`}`;
};

const limitsText = (item: ItemReport): string => {
  if (item.low !== null && item.high !== null)
    return `${withUnit(item.low, item.unit)} to ${withUnit(item.high, item.unit)}`;
  if (item.high !== null) return `at most ${withUnit(item.high, item.unit)}`;
  return item.low === null ? '' : `at least ${withUnit(item.low, item.unit)}`;
};

const itemSentence = (item: ItemReport): string =>
  `${itemWords(item)} was ${withUnit(item.value, item.unit)}; the tolerance is ${limitsText(item)}.`;

/**
 * What to look at first: a safety stop before all, then a gate flown below without being stabilised, then the
 * earliest leg that left its tolerance (an early fault makes the later ones), red before amber.
 */
export const firstLookAt = (report: Report): string => {
  const [stop] = report.safety;
  if (stop) return `First: ${stop.what}.`;
  const missed = report.go_arounds.find((g) => g.at_s === null);
  if (missed) return `A go-around was due: ${missed.why}.`;
  const item = report.items.find((i) => i.band === 'red') ?? report.items.find((i) => i.band === 'amber');
  if (item) return itemSentence(item);
  return report.items.some((i) => i.band === 'green')
    ? 'Everything that was judged lies inside its tolerance. Fly it again to make it a habit.'
    : 'Too little was flown to judge.';
};

const plural = (count: number, one: string): string =>
  count === 1 ? `once ${one}` : `${count} times ${one}`;

const helpWords = (picture: string, planLooks: number, stepsBack: number): string => {
  const words = [picture.replaceAll('-', ' ')];
  if (planLooks > 0) words.push(plural(planLooks, 'looked at the plan'));
  if (stepsBack > 0) words.push(plural(stepsBack, 'stepped back'));
  return words.join(' · ');
};

export interface HelpTaken {
  readonly picture: string;
  readonly planLooks: number;
  readonly stepsBack: number;
}

/** The lesson with the rows that its exercise looks at. */
export const judged = ({ lesson, scenario }: ReadyFlight): Lesson => ({
  ...lesson,
  assessed: exerciseOf(scenario)?.assessed ?? null,
});

/** The flight so far as a card: the same assessment as everywhere. */
export const resultOf = (flight: ReadyFlight, help: HelpTaken): ResultCard => {
  const memory = lessonMemory(flight);
  const report = assess(memory, judged(flight));
  const ending = endingOf(memory, flight.lesson);
  return {
    outcome: ending?.outcome ?? 'under-way',
    why: ending?.why ?? 'The flight still goes on.',
    flightS: flight.session.step / STEP_HZ,
    report,
    firstLook: firstLookAt(report),
    drawn: flownPath(flight.plan, flight.model.runway, flight.trail),
    help: helpWords(help.picture, help.planLooks, help.stepsBack),
  };
};
