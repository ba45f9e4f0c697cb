import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import type { LegName } from '../names.ts';
import type { CheckItem } from './check-items.ts';
import { CHECK_PLACES, itemsOf } from './check-lists.ts';
import { type ItemFact, LIST_IDS, type ListFact, type ListId, type ProcedureMemory } from './memory.ts';

/** Heads come out again when nothing has been done for so long (common practice: look out between items). */
const HEADS_OUT_S = 6;

/** Opens and closes the checks as the legs go by, and looks at what the hands do for them. */
export const watchChecks = (
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
): void => {
  const { leg, circuit } = m.legs;
  for (const list of LIST_IDS) {
    const { opens, closes, interruptedBy, goesBy } = CHECK_PLACES[list];
    const open = openList(p, list);
    if (open === null) {
      const had = p.lists.some((fact) => fact.list === list && fact.circuit === circuit);
      if (!had && opens(leg, lesson) && !closes(leg, lesson))
        p.lists.push(beginList(list, circuit, lesson, s, p));
      continue;
    }
    if (open.circuit !== circuit || closes(leg, lesson)) {
      open.closedS = s.timeS;
      const away = (interruptedBy as readonly LegName[] | undefined)?.includes(leg) ?? false;
      open.interrupted = away || (goesBy === true && hadNoTime(open, s));
      closeFact(open);
      continue;
    }
    work(open, lesson, s, p);
  }
};

const ITEM_S = 1.5; // common practice: an item said and done without haste

/** A leg that was joined at its end is over before its check could have been said: nothing begun, nothing due. */
const hadNoTime = ({ items, openS }: ListFact, s: Readonly<Snapshot>): boolean =>
  items.every(({ doneS, workS, wrong }) => doneS === null && workS === null && wrong === 0) &&
  s.timeS - openS < ITEM_S * items.length;

/** The check that is open now, of this kind. */
export const openList = (p: ProcedureMemory, list: ListId): ListFact | null =>
  p.lists.find((fact) => fact.list === list && fact.closedS === null) ?? null;

/** The check that the leg asks for now; null where there is none. */
export const currentList = (p: ProcedureMemory): ListFact | null => {
  const open = p.lists.filter((fact) => fact.closedS === null);
  return open[open.length - 1] ?? null;
};

const NOT_STANDING = -1; // definition: a mark for none

const beginList = (
  list: ListId,
  circuit: number,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  p: ProcedureMemory,
): ListFact => ({
  list,
  circuit,
  openS: s.timeS,
  closedS: null,
  interrupted: false,
  items: itemsOf(list, lesson.aeroplane).map((item) => ({
    id: item.id,
    doneS: null,
    workS: null,
    // A control that stands right already is not "put there": that wants a tick
    kept: item.stands !== undefined && !item.stands(lesson, s, p) ? NOT_STANDING : 0,
    wrong: 0,
    note: '',
  })),
  headsFromS: null,
  lastActS: s.timeS,
  heightM: s.heightM,
  headingRad: s.headingRadT,
  heightLostM: 0,
  headingLostRad: 0,
});

const work = (fact: ListFact, lesson: Lesson, s: Readonly<Snapshot>, p: ProcedureMemory): void => {
  const items = itemsOf(fact.list, lesson.aeroplane);
  fact.items.forEach((item, i) => {
    if (item.doneS !== null) return;
    const row = items[i] as CheckItem;
    if (row.how === 'worked') {
      const was = item.workS;
      if (row.work?.(item, s)) done(fact, item, s);
      else if (item.workS !== null && was === null) act(fact, s);
      return;
    }
    if (row.stands === undefined || item.kept !== NOT_STANDING) return;
    if (row.stands(lesson, s, p)) done(fact, item, s);
  });
  watchHeads(fact, s);
};

const act = (fact: ListFact, s: Readonly<Snapshot>): void => {
  fact.lastActS = s.timeS;
  if (fact.headsFromS !== null) return;
  fact.headsFromS = s.timeS;
  fact.heightM = s.heightM;
  fact.headingRad = s.headingRadT;
};

const done = (fact: ListFact, item: ItemFact, s: Readonly<Snapshot>): void => {
  act(fact, s);
  item.doneS = s.timeS;
};

const watchHeads = (fact: ListFact, s: Readonly<Snapshot>): void => {
  if (fact.headsFromS === null) return;
  if (s.timeS - fact.lastActS > HEADS_OUT_S) {
    fact.headsFromS = null;
    return;
  }
  fact.heightLostM = Math.max(fact.heightLostM, Math.abs(s.heightM - fact.heightM));
  fact.headingLostRad = Math.max(fact.headingLostRad, Math.abs(wrapPi(s.headingRadT - fact.headingRad)));
};

/** What a tick came to. */
export type Ticked = 'done' | 'wrong' | 'to-be-worked' | 'nothing';

const isTicked = (row: CheckItem | undefined): boolean => row?.how === 'set' || row?.how === 'read';

/** Something of the open check was said: right (0), or not. */
export const sayItem = (p: ProcedureMemory, lesson: Lesson, s: Readonly<Snapshot>, choice: number): void => {
  const fact = currentList(p);
  if (fact === null) return;
  const at = itemsOf(fact.list, lesson.aeroplane).findIndex(({ how }) => how === 'asked');
  const item = fact.items[at];
  if (item === undefined || item.doneS !== null) return;
  if (choice === 0) done(fact, item, s);
  else {
    item.wrong += 1;
    act(fact, s);
  }
};

/** The next item that a tick can stand for; one that was ticked wrongly comes after those that were not. */
const nextToTick = ({ items }: ListFact, rows: readonly CheckItem[]): number => {
  let best = -1;
  items.forEach(({ doneS, wrong }, i) => {
    if (doneS !== null || !isTicked(rows[i])) return;
    if (best === -1 || wrong < (items[best]?.wrong ?? 0)) best = i;
  });
  return best;
};

/** Ticks an item of the open check, or with an empty id the next that a tick can stand for. */
export const tickItem = (p: ProcedureMemory, lesson: Lesson, s: Readonly<Snapshot>, id: string): Ticked => {
  const fact = currentList(p);
  if (fact === null) return 'nothing';
  const items = itemsOf(fact.list, lesson.aeroplane);
  const at =
    id === ''
      ? nextToTick(fact, items)
      : fact.items.findIndex((item) => item.id === id && item.doneS === null);
  const item = fact.items[at];
  const row = items[at];
  if (item === undefined || row === undefined) return 'nothing';
  if (!isTicked(row)) return 'to-be-worked';
  if (row.stands !== undefined && !row.stands(lesson, s, p)) {
    item.wrong += 1;
    act(fact, s);
    return 'wrong';
  }
  done(fact, item, s);
  return 'done';
};

/** Whether every item of a check is done. */
export const isComplete = (fact: ListFact): boolean => fact.items.every((item) => item.doneS !== null);
