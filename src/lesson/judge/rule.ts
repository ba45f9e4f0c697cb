import type { Aerodrome } from '../../aerodrome/schema.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import type { LegName } from '../names.ts';
import type { CircuitFacts } from '../watch/facts.ts';
import type { CommonLimit, Limit, LimitsWith } from './limit.ts';
import type { Unit } from './value-words.ts';

/** What a measured value is held against. */
export interface Standard {
  readonly target: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly source: string;
  /** Closest end of amber on the low side. */
  readonly amberLow?: number;
}

/** Words for whoever was outside, on each side. */
export interface Sides {
  readonly low?: string;
  readonly high?: string;
}

/** The parts of a flight in the order in which an instructor talks it over: the approach first (common practice). */
export const PARTS = [
  'Approach',
  'Final',
  'Round-out',
  'Hold-off',
  'Touchdown',
  'Landing roll',
  'Base',
  'Downwind',
  'Crosswind',
  'Upwind and take-off',
  'All through',
] as const;
export type Part = (typeof PARTS)[number];

/** Which hand does what on final, as the aerodrome teaches it. */
export type Teaching = Aerodrome['circuit']['teaching'];

/** The flight at this instant. */
export interface Moment {
  readonly m: LessonMemory;
  readonly lesson: Lesson;
  readonly s: Readonly<Snapshot>;
}

/** What the coach looks at while it lasts, against the same target and tolerance as afterwards. */
export interface Live {
  /** Where, if not on the row's own leg. */
  readonly legs?: readonly LegName[];
  /** Seconds on the leg before it is looked at. */
  readonly settleS: number;
  /** How urgent a word is: the lower the sooner. */
  readonly rank: number;
  /** Null: not now. */
  readonly value: (now: Moment) => number | null;
  /** Where the value is smoothed: what the pilot reads at this instant. Nothing is said of it that this would belie. */
  readonly reads?: (now: Moment) => number | null;
  /** What is said while it lasts, where that is not what is said afterwards. */
  readonly say?: Sides | Readonly<Record<Teaching, Sides>>;
}

/** What every row of the table states, whatever it looks at. */
interface Row<K extends string> {
  readonly id: string;
  /** Where it is looked at. */
  readonly leg: LegName;
  /** What it is called after its leg: "height". */
  readonly name: string;
  /** The name stands without the leg. */
  readonly alone?: true;
  /** What it is called below and above its tolerance: "too low", "too high". */
  readonly sides?: Sides;
  /** What an instructor says of it, the number after it: "You turned base late". */
  readonly spoken?: Sides;
  /** "height at the start of the turn". */
  readonly measures: string;
  readonly unit: Unit;
  /** The sentence of a result, where "Downwind: height was 640 ft" would not say it. */
  readonly sentence?: (value: number, title: string) => string;
  /** Limits that it brings along, by the name under which a set keeps them. */
  readonly limits?: Readonly<Record<K, CommonLimit>>;
  readonly say: Sides;
  /** The exercise that trains it. */
  readonly trainedBy: string;
  /** With which part of the flight it is talked over, where that is not its leg's. */
  readonly part?: Part;
  /** A check, a call, a lookout: no flying. */
  readonly besideFlying?: true;
  /** One value inside the tolerance and one far outside, at the demonstration's circuit. */
  readonly good: number;
  readonly bad: number;
}

/** A row that brings along the limits named K. */
export interface RuleWith<K extends string> extends Row<K> {
  /** Undefined: this circuit had no such thing. Null: it had, and nothing could be measured. */
  measure(c: CircuitFacts): number | null | undefined;
  /** True where there is a value but nothing to judge by: circuit, lights, assist or orders made it so. */
  readonly unjudged?: (c: CircuitFacts) => boolean;
  against(c: CircuitFacts, limits: LimitsWith<K>): Standard;
  readonly live?: Live;
}

/** A row of the table of what is assessed, looked at once a circuit. Nothing about it stands elsewhere. */
export type Rule = RuleWith<string>;

/** A row that looks at several circuits together. */
export interface SessionRule extends Row<string> {
  measure(circuits: readonly CircuitFacts[], limits: LimitsWith<string>): number | null | undefined;
  against(limits: LimitsWith<string>): Standard;
}

/** A row with limits of its own, which its `against` gets by their names. */
export const rule = <K extends string>(row: RuleWith<K>): Rule => row;

/** Either side of a target. */
export const around = (target: number, limit: Limit): Standard => ({
  target,
  low: target - limit.below,
  high: target + limit.above,
  source: limit.source,
});

/** At most so much. */
export const atMost = (target: number, limit: Limit): Standard => ({
  target,
  low: null,
  high: limit.above,
  source: limit.source,
});
