import { type LegName, turnOnto } from '../names.ts';
import { itemTitle } from './item-words.ts';
import type { Band, Report } from './report.ts';

/** One judged row of a leg that is over. */
export interface LegMark {
  /** "Downwind: height". */
  readonly title: string;
  readonly band: Band;
}

/** The marks of one leg, the turn onto it included. */
export interface LegMarks {
  readonly leg: LegName;
  readonly marks: readonly LegMark[];
}

/**
 * What is said of the circuit under way without a word: for each leg that is over, what was judged on it. The same
 * rows with the same bands as afterwards; the leg that is being flown is left in peace.
 */
export const legMarks = ({ legs, items }: Pick<Report, 'legs' | 'items'>): readonly LegMarks[] => {
  const now = legs[legs.length - 1];
  if (now === undefined) return [];
  const over = new Set(legs.filter(({ circuit }) => circuit === now.circuit).map(({ leg }) => leg));
  over.delete(now.leg);
  const byLeg = new Map<LegName, LegMark[]>();
  for (const item of items) {
    if (item.circuit !== now.circuit || !over.has(item.leg) || item.band === 'not-judged') continue;
    const leg = turnOnto(item.leg) ?? item.leg;
    byLeg.set(leg, [...(byLeg.get(leg) ?? []), { title: itemTitle(item), band: item.band }]);
  }
  return [...byLeg].map(([leg, marks]) => ({ leg, marks }));
};
