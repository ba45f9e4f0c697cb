import type { ItemReport } from '../judge/report.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import { doingWords } from './check-items.ts';
import { checkItemWords, itemsOf, titleOf } from './check-lists.ts';
import type { CallFact, ListFact } from './memory.ts';

/** What an item is done by where it is not done by a tick: "(work it: pressed, felt, let go)". */
const itemWords = (fact: ListFact, at: number, lesson: Lesson): string => {
  const row = itemsOf(fact.list, lesson.aeroplane)[at];
  if (row === undefined) return '';
  const how = doingWords(row.name);
  return `${checkItemWords(row, lesson)}${how === '' ? '' : ` (${how})`}`;
};

const checkWords = (fact: ListFact, lesson: Lesson): readonly string[] => {
  const left = fact.items.flatMap(({ doneS }, i) => (doneS === null ? [itemWords(fact, i, lesson)] : []));
  if (left.length === 0) return [];
  const title = `Check ${titleOf(fact.list).toLowerCase()}`;
  return left.length === fact.items.length
    ? [`${title}: none of its ${left.length} items was done.`]
    : [`${title}, left out: ${left.join('; ')}.`];
};

const callWords = ({ call, saidS, choice, lateS }: CallFact): readonly string[] => {
  const name = call.replaceAll('-', ' ');
  if (saidS === null) return [`Call “${name}”: not made.`];
  if (choice !== 0) return [`Call “${name}”: not in its words.`];
  return lateS !== null && saidS > lateS ? [`Call “${name}”: made too late.`] : [];
};

/** The items and calls by name that rows of a result found missing; of rows that were not looked at nothing is said. */
export const leftOut = (
  m: LessonMemory,
  lesson: Lesson,
  items: readonly Pick<ItemReport, 'id' | 'circuit' | 'band'>[],
): readonly string[] => {
  const p = m.procedures;
  if (p === null) return [];
  const fellShort = (id: string, circuit: number): boolean =>
    items.some(
      (item) => item.id === id && item.circuit === circuit && (item.band === 'red' || item.band === 'amber'),
    );
  return [
    ...p.lists
      .filter(({ list, circuit, interrupted }) => !interrupted && fellShort(`checks-${list}`, circuit))
      .flatMap((fact) => checkWords(fact, lesson)),
    ...p.calls
      .filter(
        ({ circuit, saidS, closedS }) => (saidS !== null || closedS !== null) && fellShort('calls', circuit),
      )
      .flatMap(callWords),
  ];
};
