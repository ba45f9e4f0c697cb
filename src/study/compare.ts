import { meanOf } from '../lesson/measure.ts';
import type { LessonMemory, Stretch } from '../lesson/memory.ts';
import type { LegName } from '../lesson/names.ts';
import { lookup } from '../maths/tables.ts';

/** The same leg in two flights; SI, second minus first where it is a difference. */
export interface LegPair {
  readonly circuit: number;
  readonly leg: LegName;
  readonly first: { readonly fromS: number; readonly toS: number };
  readonly second: { readonly fromS: number; readonly toS: number };
  readonly secondsLonger: number;
  readonly higherAtEndM: number;
  /** Null where one of them has no speed. */
  readonly fasterMps: number | null;
}

/** Two flights side by side, leg by leg: one cursor for two clocks. */
export interface Alignment {
  readonly legs: readonly LegPair[];
  /** Places where the two clocks are tied together, both rising. */
  readonly firstS: readonly number[];
  readonly secondS: readonly number[];
}

const all = (m: LessonMemory): Stretch[] => [...m.stretches, m.now];

/**
 * Ties two flights together where both begin and end the same leg; a leg that only one of them has is passed over,
 * and between two ties time runs evenly. The legs of both come in the order in which they were flown.
 */
export const alignByLeg = (first: LessonMemory, second: LessonMemory): Alignment => {
  const others = all(second);
  const legs: LegPair[] = [];
  let from = 0;
  for (const a of all(first)) {
    const at = others.findIndex((b, i) => i >= from && b.leg === a.leg && b.circuit === a.circuit);
    const b = others[at];
    if (b === undefined) continue;
    from = at + 1;
    legs.push(pairOf(a, b));
  }
  const firstS: number[] = [];
  const secondS: number[] = [];
  const tie = (a: number, b: number): void => {
    const last = firstS.length - 1;
    if (last >= 0 && (a <= (firstS[last] as number) || b <= (secondS[last] as number))) return;
    firstS.push(a);
    secondS.push(b);
  };
  for (const pair of legs) {
    tie(pair.first.fromS, pair.second.fromS);
    tie(pair.first.toS, pair.second.toS);
  }
  return { legs, firstS, secondS };
};

const pairOf = (a: Stretch, b: Stretch): LegPair => {
  const was = meanOf(a.iasMps);
  const is = meanOf(b.iasMps);
  return {
    circuit: a.circuit,
    leg: a.leg,
    first: { fromS: a.fromS, toS: a.toS },
    second: { fromS: b.fromS, toS: b.toS },
    secondsLonger: b.toS - b.fromS - (a.toS - a.fromS),
    higherAtEndM: b.endHeightM - a.endHeightM,
    fasterMps: was === null || is === null ? null : is - was,
  };
};

/** The second flight's time when the first stands at `timeS`; before the first tie and after the last both clocks run alike. */
export const timeInSecond = ({ firstS, secondS }: Alignment, timeS: number): number => {
  const last = firstS.length - 1;
  if (last < 0) return timeS;
  const beginS = firstS[0] as number;
  const endS = firstS[last] as number;
  if (timeS <= beginS) return (secondS[0] as number) + timeS - beginS;
  if (timeS >= endS) return (secondS[last] as number) + timeS - endS;
  return lookup(firstS, secondS, timeS);
};
