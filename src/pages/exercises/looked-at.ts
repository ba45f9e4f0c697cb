import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { ALL_RULES } from '../../lesson/judge/rules.ts';
import { selects } from '../../lesson/judge/selection.ts';
import { legWords } from '../../lesson/names.ts';

/** The rows that are assessed, leg by leg: "upwind: height, speed, track". */
export const lookedAt = ({ assessed }: Exercise): readonly string[] => {
  const legs = new Map<string, Set<string>>();
  for (const { id, leg, name } of ALL_RULES) {
    if (!selects(assessed, id)) continue;
    const legText = legWords(leg);
    legs.set(legText, (legs.get(legText) ?? new Set()).add(name));
  }
  return [...legs].map(([leg, names]) => `${leg}: ${[...names].join(', ')}`);
};
