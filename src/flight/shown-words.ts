import { titleOf } from '../lesson/procedures/check-lists.ts';
import { lookoutPercent } from '../lesson/procedures/lookout.ts';
import type { ProcedureMemory } from '../lesson/procedures/memory.ts';
import { type Flight, lessonMemory } from './flight.ts';

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const ofAll = (done: number, all: number): string => (done === all ? `all ${all}` : `${done} of ${all}`);

const checksWords = ({ lists }: ProcedureMemory): readonly string[] =>
  lists
    .filter(({ interrupted, items }) => !interrupted && items.some(({ doneS }) => doneS !== null))
    .map(({ list, items }) => {
      const done = items.filter(({ doneS }) => doneS !== null).length;
      return `Check ${titleOf(list).toLowerCase()}: ${ofAll(done, items.length)} items.`;
    });

/** What a demonstration has shown, a sentence each: what was flown, checked, called, looked at. No verdict. */
export const shownWords = (flight: Flight): readonly string[] => {
  const { turns, touchdowns, goArounds, procedures: p } = lessonMemory(flight);
  const flown = [
    ...(turns.length > 0 ? [count(turns.length, 'turn')] : []),
    ...(goArounds.length > 0 ? [count(goArounds.length, 'go-around')] : []),
    ...(touchdowns.length > 0 ? [count(touchdowns.length, 'landing')] : []),
  ].join(', ');
  const words = flown === '' ? [] : [`Flown: ${flown}.`];
  if (p === null) return words;
  const calls = p.calls.filter(({ saidS }) => saidS !== null).length;
  const looks = turns.map((turn) => lookoutPercent(p, turn, flight.lesson)).filter((each) => each !== null);
  const looked = looks.filter((percent) => percent === 100).length;
  return [
    ...words,
    ...checksWords(p),
    ...(calls > 0 ? [`Radio: ${count(calls, 'call')}, in the words of the card.`] : []),
    ...(looks.length > 0
      ? [`Lookout: before ${looked === looks.length ? 'every turn' : `${looked} of ${looks.length} turns`}.`]
      : []),
  ];
};
