import { degFromRad, ftFromM } from '../../../units/conversions.ts';
import { lastWhere } from '../../last-where.ts';
import type { TurnFact } from '../../memory.ts';
import type { LegName } from '../../names.ts';
import { NO_PRESSURE } from '../../procedures/check-items.ts';
import { titleOf } from '../../procedures/check-lists.ts';
import { lookoutPercent } from '../../procedures/lookout.ts';
import { isReadBack, type ListFact, type ListId, type ProcedureMemory } from '../../procedures/memory.ts';
import { turnOntoLeg } from '../../watch/facts.ts';
import { around, atMost, type CircuitFacts, PRACTICE, type Rule } from '../rule.ts';

const LIST_LEGS: Readonly<Record<ListId, LegName>> = {
  'before-take-off': 'line-up',
  'after-take-off': 'upwind',
  downwind: 'downwind',
  final: 'final',
  'go-around': 'go-around',
  'after-landing': 'stopped',
};

const proceduresOf = (c: CircuitFacts): ProcedureMemory | null => c.m.procedures ?? null;

/** The check of this circuit, once its place has been passed. */
const listOf = (c: CircuitFacts, list: ListId): ListFact | null =>
  lastWhere(
    proceduresOf(c)?.lists ?? [],
    (fact) => fact.list === list && fact.circuit === c.circuit && !fact.interrupted,
  );

const donePercent = ({ items }: ListFact): number =>
  items.length === 0 ? 100 : (100 * items.filter(({ doneS }) => doneS !== null).length) / items.length;

const checksRow = (list: ListId): Rule => ({
  id: `checks-${list}`,
  leg: LIST_LEGS[list],
  measures: `items of the check done in time: ${titleOf(list).toLowerCase()}`,
  unit: '%',
  say: { low: 'The check was left out or broken off: the same words in the same order every time.' },
  good: 100,
  bad: 40,
  measure: (c) => {
    const fact = listOf(c, list);
    return fact === null ? undefined : donePercent(fact);
  },
  // Nothing to be late for yet
  unjudged: (c) => listOf(c, list)?.closedS === null && list !== 'after-landing',
  against: (_, limits) => around(100, limits.checksPercent),
});

/** Items done before one that stands above them in the list. */
const outOfOrder = ({ items }: ListFact): number => {
  let latest = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (const { doneS } of items) {
    if (doneS === null) continue;
    if (doneS < latest) count += 1;
    latest = Math.max(latest, doneS);
  }
  return count;
};

const orderRow = (list: ListId, say: string): Rule => ({
  id: `${list}-order`,
  leg: LIST_LEGS[list],
  measures: 'items done after one that follows them',
  unit: 'items',
  say: { high: say },
  good: 0,
  bad: 4,
  measure: (c) => {
    const fact = listOf(c, list);
    return fact === null ? undefined : outOfOrder(fact);
  },
  against: (_, limits) => atMost(0, limits.outOfOrderItems),
});

const lookoutRow = (onto: TurnFact['onto'], say: string): Rule => ({
  id: `lookout-${onto}`,
  leg: `turn-to-${onto}`,
  measures: 'lookout before the turn: away from it, ahead, last into it',
  unit: '%',
  say: { low: say },
  good: 100,
  bad: 25,
  measure: (c) => {
    const p = proceduresOf(c);
    const turn = turnOntoLeg(c, onto);
    return p === null || turn === null ? undefined : lookoutPercent(p, turn, c.lesson);
  },
  against: (_, limits) => around(100, limits.lookoutPercent),
});

const headsIn = (c: CircuitFacts, of: (fact: ListFact) => number): number | undefined => {
  const fact = listOf(c, 'downwind');
  return fact === null || fact.items.every(({ doneS }) => doneS === null) ? undefined : of(fact);
};

const HEADS_IN = 'Heads in too long: one item, then look out and at the attitude, then the next.';

const callsPercent = (c: CircuitFacts): number | undefined => {
  const p = proceduresOf(c);
  const due = (p?.calls ?? []).filter(
    (call) => call.circuit === c.circuit && (call.closedS !== null || call.saidS !== null),
  );
  if (due.length === 0) return undefined;
  const right = due.filter(
    ({ saidS, dueS, lateS, choice }) =>
      saidS !== null && dueS !== null && choice === 0 && (lateS === null || saidS <= lateS),
  );
  return (100 * right.length) / due.length;
};

/** Longest from the tower's words to the right answer; a wrong or missing one counts a minute. */
const readBackS = (c: CircuitFacts): number | undefined => {
  const answers = (proceduresOf(c)?.answers ?? []).filter(
    ({ answer, circuit }) => circuit === c.circuit && isReadBack(answer),
  );
  if (answers.length === 0) return undefined;
  return Math.max(
    ...answers.map(({ heardS, readS, choice }) => (readS === null || choice !== 0 ? 60 : readS - heardS)),
  );
};

/** Beside the flying: checks, calls, lookout, spacing. */
export const PROCEDURE_RULES: readonly Rule[] = [
  checksRow('before-take-off'),
  checksRow('after-take-off'),
  checksRow('downwind'),
  checksRow('final'),
  checksRow('go-around'),
  checksRow('after-landing'),
  orderRow('downwind', 'The check has an order: said the same way every time nothing is left out.'),
  orderRow('go-around', 'Power first, then attitude, then configuration; the call comes last.'),
  {
    id: 'heads-in-height',
    leg: 'downwind',
    measures: 'height lost or gained while heads were in for the check',
    unit: 'ft',
    say: { high: HEADS_IN },
    good: 30,
    bad: 260,
    measure: (c) => headsIn(c, (fact) => ftFromM(fact.heightLostM)),
    against: (_, limits) => atMost(0, limits.heightFt),
  },
  {
    id: 'heads-in-heading',
    leg: 'downwind',
    measures: 'heading lost while heads were in for the check',
    unit: 'deg',
    say: { high: HEADS_IN },
    good: 3,
    bad: 30,
    measure: (c) => headsIn(c, (fact) => degFromRad(fact.headingLostRad)),
    against: (_, limits) => atMost(0, limits.trackDeg),
  },
  {
    id: 'subscale',
    leg: 'downwind',
    measures: 'altimeter subscale from the QNH when base was turned',
    unit: 'hPa',
    say: {
      low: 'The altimeter was not on QNH: 1 hPa is some 27 ft, and the circuit flown lower than shown.',
      high: 'The altimeter was not on QNH: 1 hPa is some 27 ft, and the circuit is flown lower than shown.',
    },
    good: 0,
    bad: 6,
    measure: (c) => {
      const p = proceduresOf(c);
      const qnhHpa = c.lesson.procedures?.qnhHpa;
      if (p === null || qnhHpa === undefined || turnOntoLeg(c, 'base') === null) return undefined;
      return p.subscaleHpa - qnhHpa;
    },
    against: (_, limits) => around(0, limits.subscaleHpa),
  },
  {
    id: 'brakes-found',
    leg: 'downwind',
    measures: 'brakes without pressure, found before the landing',
    unit: 'found',
    say: { low: 'The brakes had no pressure, and it was found on the runway: try them on downwind.' },
    good: 1,
    bad: 0,
    measure: (c) => {
      const p = proceduresOf(c);
      if (p === null || !c.lesson.procedures?.brakesFail || c.touchdown === null) return undefined;
      return p.lists.some(({ items }) => items.some(({ note }) => note === NO_PRESSURE)) ? 1 : 0;
    },
    against: () => ({ target: 1, low: 1, high: 1, source: `${PRACTICE}: brakes tried on downwind` }),
  },
  lookoutRow('crosswind', 'Look out before the turn: away from it, ahead, and last where you turn.'),
  lookoutRow('downwind', 'Look out before the turn, and for traffic joining downwind.'),
  lookoutRow('base', 'Before base look away from the turn, ahead, and along long final; then turn.'),
  lookoutRow('final', 'Before final look along the approach and for the opposite base; then turn.'),
  {
    id: 'calls',
    leg: 'downwind',
    measures: 'calls made at their place and in their words',
    unit: '%',
    say: { low: 'Who you call, who you are, where you are, what you intend: at its place, not later.' },
    good: 100,
    bad: 30,
    measure: callsPercent,
    against: (_, limits) => around(100, limits.callsPercent),
  },
  {
    id: 'read-back',
    leg: 'downwind',
    measures: 'longest from the words of the tower to the right answer',
    unit: 's',
    say: { high: 'Clearances are read back with the runway, at once; "roger" is no read-back.' },
    good: 5,
    bad: 60,
    measure: readBackS,
    against: (_, limits) => atMost(0, limits.readBackS),
  },
  {
    id: 'clearance',
    leg: 'final',
    measures: 'runway used without a clearance',
    unit: 'times',
    say: { high: "The runway is the tower's: no clearance, no take-off and no landing." },
    good: 0,
    bad: 1,
    measure: (c) => {
      if (c.lesson.procedures?.radio !== 'towered') return undefined;
      return proceduresOf(c)?.uncleared.filter(({ circuit }) => circuit === c.circuit).length;
    },
    against: () => ({ target: 0, low: 0, high: 0, source: 'ICAO Annex 2: cleared to take off and to land' }),
  },
  {
    id: 'spacing-ahead',
    leg: 'downwind',
    measures: 'nearest to another aeroplane in the air',
    unit: 'm',
    say: { low: 'Too close to the one ahead: extend, widen or slow down early; in doubt go around.' },
    good: 1200,
    bad: 200,
    measure: (c) => proceduresOf(c)?.nearest.find(({ circuit }) => circuit === c.circuit)?.metres,
    against: (_, { spacingAheadM }) => ({
      target: spacingAheadM.below,
      low: spacingAheadM.below,
      high: null,
      source: spacingAheadM.source,
    }),
  },
];
