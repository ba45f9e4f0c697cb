import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { itemWords, legWords } from '../../lesson/judge/item-words.ts';
import { RULES, SESSION_RULES } from '../../lesson/judge/rules.ts';
import { selects } from '../../lesson/judge/selection.ts';

/** The rows that are assessed, leg by leg: "upwind: height, speed, track". */
export const lookedAt = ({ assessed }: Exercise): readonly string[] => {
  const legs = new Map<string, Set<string>>();
  for (const { id, leg } of [...RULES, ...SESSION_RULES]) {
    if (!selects(assessed, id)) continue;
    const legText = legWords(leg);
    const name = itemWords(id, leg).replace(`${legText}: `, '').replace(`${legText} `, '');
    legs.set(legText, (legs.get(legText) ?? new Set()).add(name));
  }
  return [...legs].map(([leg, names]) => `${leg}: ${[...names].join(', ')}`);
};
