import type { Lesson } from '../lesson.ts';
import type { LessonMemory, Stretch, TouchdownFact, TurnFact } from '../memory.ts';
import type { LegName } from '../names.ts';
import type { Limit, ToleranceSet } from './tolerances.ts';

/** What one circuit left behind, for the rows to look at. */
export interface CircuitFacts {
  readonly circuit: number;
  readonly stretches: readonly Stretch[];
  readonly turns: readonly TurnFact[];
  readonly touchdown: TouchdownFact | null;
  readonly m: LessonMemory;
  readonly lesson: Lesson;
}

/** What a measured value is held against. */
export interface Standard {
  readonly target: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly source: string;
  /** Closest end of amber on the low side. */
  readonly amberLow?: number;
}

/** What to say to whoever was outside, on each side. */
export interface WhatToSay {
  readonly low?: string;
  readonly high?: string;
}

interface Row {
  readonly id: string;
  /** Where it is looked at. */
  readonly leg: LegName;
  /** "height at the start of the turn". */
  readonly measures: string;
  readonly unit: string;
  readonly say: WhatToSay;
  /** One value inside the tolerance and one far outside, at the demonstration's circuit. */
  readonly good: number;
  readonly bad: number;
}

/** A row of the table of what is assessed, looked at once a circuit. */
export interface Rule extends Row {
  /** Undefined: this circuit had no such thing. Null: it had, and nothing could be measured. */
  measure(c: CircuitFacts): number | null | undefined;
  /** True where there is a value but nothing to judge by: circuit, lights, assist or orders made it so. */
  readonly unjudged?: (c: CircuitFacts) => boolean;
  against(c: CircuitFacts, limits: ToleranceSet): Standard;
}

/** A row that looks at several circuits together. */
export interface SessionRule extends Row {
  measure(circuits: readonly CircuitFacts[], limits: ToleranceSet): number | null | undefined;
  against(limits: ToleranceSet): Standard;
}

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

export const PRACTICE = 'common practice';
