// What the result's box and the debrief say first, of twenty-one deliberate mistakes flown on fifteen days by the
// independent student (tests/support/student): the right thing, the same in both, nothing amber before something red,
// and no advice that would make it worse. `LAPWING_LONG=1` flies all of it with the search for the root, and prints
// the table. Days 1 to 3 and 7 to 11 were tuned by; of days 4 to 6 six wrong lines were seen before the last changes;
// days 12 to 15 were not seen.
import { describe, expect, it, vi } from 'vitest';
import { firstLookAt } from '../../src/flight/result-words.ts';
import { firstThing } from '../../src/lesson/judge/first/first-thing.ts';
import { wordsFor } from '../../src/lesson/judge/judge.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import { debriefWords } from '../../src/pages/debrief/first-words.ts';
import type { RootResult } from '../../src/study/root/result.ts';
import { findRoot } from '../../src/study/root/root.ts';
import { adviceThatHurts } from '../support/advice-that-hurts.ts';
import { flyMistake, leftOutBecause, MISTAKE_DAYS, MISTAKES, type Mistake } from '../support/mistakes.ts';
import type { StudentFlight } from '../support/student/flights.ts';

const LONG = process.env.LAPWING_LONG === '1';
if (LONG) vi.setConfig({ testTimeout: 3_000_000 });
const ONLY = new RegExp(process.env.LAPWING_ONLY ?? '');
const SEARCHES = LONG && process.env.LAPWING_NO_ROOT !== '1';

const rootOf = ({ recording, plan }: StudentFlight): RootResult => {
  const search = findRoot({ recording, plan, exercise: null, limits: DEFAULT_TOLERANCES });
  for (;;) {
    const { done, value } = search.next();
    if (done === true) return value;
  }
};

interface Tried {
  readonly mistake: Mistake;
  readonly day: number;
  readonly leftOut: string | null;
  readonly line: string;
  readonly debrief: string;
  readonly right: boolean;
  readonly amberFirst: boolean;
  readonly hurts: readonly string[];
}

const tryOut = (mistake: Mistake, day: number): Tried => {
  const flown = flyMistake(mistake, day, true);
  const { result } = flown;
  const twin = LONG && mistake.turnsBack !== true ? flyMistake(mistake, day, false).result : null;
  const leftOut = twin === null ? null : leftOutBecause(result, twin);
  const thing = firstThing(result);
  const line = firstLookAt(result);
  const { first, after } = debriefWords(result, SEARCHES && leftOut === null ? rootOf(flown) : null);
  const advice = result.items.map(wordsFor).filter((words) => words !== '');
  return {
    mistake,
    day,
    leftOut,
    line,
    debrief: first,
    right: mistake.says.test(line),
    amberFirst: thing?.lead.band === 'amber' && isRed(result),
    hurts: [line, first, ...after, ...advice].flatMap((words) =>
      adviceThatHurts(words, result, flown.lesson.plan),
    ),
  };
};

const isRed = ({ items, safety, outcome }: StudentFlight['result']): boolean =>
  outcome !== 'stopped' || safety.length > 0 || items.some(({ band }) => band === 'red');

/** All of it, or what is quick to fly: landings from final, and three others; each on one of the days to tune by. */
const QUICK = /^(?:base late|over-banked final turn|turned back)/;
const TRIED = MISTAKES.filter(
  ({ name, leg }) => ONLY.test(name) && (LONG || leg === 'final' || QUICK.test(name)),
).flatMap((mistake, i) =>
  (LONG ? MISTAKE_DAYS.map((_, day) => day) : [1 + (i % 2)]).map((day) => tryOut(mistake, day)),
);
const counted = TRIED.filter(({ leftOut }) => leftOut === null);

const share = (of: readonly Tried[], holds: (tried: Tried) => boolean): string =>
  `${of.filter(holds).length} of ${of.length}`;

const table = (): string => {
  const rows = MISTAKES.map((mistake) => {
    const mine = counted.filter((tried) => tried.mistake === mistake);
    const out = TRIED.filter((tried) => tried.mistake === mistake && tried.leftOut !== null);
    const same = share(mine, ({ line, debrief }) => line === debrief);
    const amber = mine.filter(({ amberFirst }) => amberFirst).length;
    const hurts = mine.filter(({ hurts }) => hurts.length > 0).length;
    const why = out.map(({ day, leftOut }) => `day ${day + 1} ${leftOut}`).join(', ');
    return `| ${mistake.name} | ${share(mine, ({ right }) => right)} | ${same} | ${amber} | ${hurts} | ${why} |`;
  });
  const of = (from: number, to: number): string =>
    share(
      counted.filter(({ day }) => day >= from && day <= to),
      ({ right }) => right,
    );
  return [
    '| mistake | right | box = debrief | amber first | advice hurts | left out |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
    `first line right: days 1 to 3 ${of(0, 2)}, days 4 to 6 ${of(3, 5)}, days 7 to 11 ${of(6, 10)}, days 12 to 15 ${of(11, 14)}`,
    ...counted
      .filter(({ right }) => !right || process.env.LAPWING_ALL === '1')
      .map(
        ({ mistake, day, line, right }) =>
          `${right ? '     ' : 'WRONG'} ${mistake.name}, day ${day + 1}: ${line}`,
      ),
    ...new Set(
      counted.flatMap(({ mistake, hurts }) => hurts.map((words) => `HURTS ${mistake.name}: ${words}`)),
    ),
  ].join('\n');
};

describe('what is said first of a deliberate mistake', () => {
  it('is the right thing in nineteen of twenty', () => {
    if (LONG) process.stdout.write(`${table()}\n`);
    const right = counted.filter((tried) => tried.right);
    expect(counted.length).toBeGreaterThan(0);
    expect(right.length, table()).toBeGreaterThanOrEqual(0.95 * counted.length);
  });

  it('is the same in the box and in the debrief', () => {
    expect(counted.filter(({ line, debrief }) => line !== debrief).map(({ line }) => line)).toEqual([]);
  });

  it('is nothing amber where something is red', () => {
    expect(counted.filter(({ amberFirst }) => amberFirst).map(({ line }) => line)).toEqual([]);
  });

  it('and all the rest of the advice would make nothing worse', () => {
    expect(counted.flatMap(({ hurts }) => hurts)).toEqual([]);
  });
});
