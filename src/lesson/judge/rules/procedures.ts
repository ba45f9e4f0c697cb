import { degFromRad, ftFromM } from '../../../units/conversions.ts';
import { lastWhere } from '../../last-where.ts';
import type { TurnOnto } from '../../names.ts';
import { NO_PRESSURE } from '../../procedures/check-items.ts';
import { titleOf } from '../../procedures/check-lists.ts';
import { lookoutPercent } from '../../procedures/lookout.ts';
import { isReadBack, type ListFact, type ListId, type ProcedureMemory } from '../../procedures/memory.ts';
import { type CircuitFacts, turnOntoLeg } from '../../watch/facts.ts';
import { PRACTICE, practice } from '../limit.ts';
import { around, atMost, type Rule, rule } from '../rule.ts';
import { DEG, FT, M, PERCENT, phrased, plain, S, TIMES } from '../value-words.ts';
import { HEIGHT_SIDES } from './legs.ts';

/** Where the check of a list belongs, what its row is called, and what trains it. */
const LISTS: Readonly<Record<ListId, Pick<Rule, 'leg' | 'name' | 'trainedBy'>>> = {
  'before-take-off': { leg: 'line-up', name: 'check before take-off', trainedBy: 'take-off-and-climb' },
  'after-take-off': { leg: 'upwind', name: 'check after take-off', trainedBy: 'take-off-and-climb' },
  downwind: { leg: 'downwind', name: 'check', trainedBy: 'downwind-and-checks' },
  final: { leg: 'final', name: 'check', trainedBy: 'final-and-landing' },
  'go-around': { leg: 'go-around', name: 'order of the go-around, whole', trainedBy: 'go-around' },
  'after-landing': { leg: 'stopped', name: 'check after landing', trainedBy: 'normal-circuit' },
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

const CHECKS = {
  checksPercent: { title: 'checks, %', ...practice(15, 0, 'one item in seven may have been forgotten') },
};

const checksRow = (list: ListId): Rule =>
  rule({
    id: `checks-${list}`,
    ...LISTS[list],
    spoken: { low: `You left out most of the ${titleOf(list).toLowerCase()} check` },
    measures: `items of the check done in time: ${titleOf(list).toLowerCase()}`,
    unit: PERCENT,
    limits: CHECKS,
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

const ORDER = {
  outOfOrderItems: { title: 'out of order, items', ...practice(0, 1, 'one item out of its order') },
};

const orderRow = (list: ListId, own: Pick<Rule, 'name' | 'say' | 'part'>): Rule =>
  rule({
    ...LISTS[list],
    id: `${list}-order`,
    measures: 'items done after one that follows them',
    unit: phrased('items', ' out of order'),
    limits: ORDER,
    good: 0,
    bad: 4,
    ...own,
    measure: (c) => {
      const fact = listOf(c, list);
      return fact === null ? undefined : outOfOrder(fact);
    },
    against: (_, limits) => atMost(0, limits.outOfOrderItems),
  });

const LOOKOUT = {
  lookoutPercent: {
    title: 'lookout, %',
    ...practice(20, 0, 'the whole lookout; one direction left out is amber'),
  },
};

const lookoutRow = (onto: TurnOnto, trainedBy: string, say: string): Rule =>
  rule({
    id: `lookout-${onto}`,
    leg: `turn-to-${onto}`,
    name: 'lookout before it',
    measures: 'lookout before the turn: away from it, ahead, last into it',
    unit: PERCENT,
    limits: LOOKOUT,
    say: { low: say },
    trainedBy,
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

const ROWS: readonly Rule[] = [
  checksRow('before-take-off'),
  checksRow('after-take-off'),
  checksRow('downwind'),
  checksRow('final'),
  checksRow('go-around'),
  checksRow('after-landing'),
  orderRow('downwind', {
    name: 'order of the check',
    say: { high: 'The check has an order: said the same way every time nothing is left out.' },
  }),
  orderRow('go-around', {
    name: 'power, attitude, configuration',
    say: { high: 'Power first, then attitude, then configuration; the call comes last.' },
    part: 'Approach',
  }),
  {
    id: 'heads-in-height',
    leg: 'downwind',
    name: 'height with heads in',
    sides: HEIGHT_SIDES,
    measures: 'height lost or gained while heads were in for the check',
    unit: FT,
    say: { high: HEADS_IN },
    trainedBy: 'downwind-and-checks',
    good: 30,
    bad: 260,
    measure: (c) => headsIn(c, (fact) => ftFromM(fact.heightLostM)),
    against: (_, limits) => atMost(0, limits.heightFt),
  },
  {
    id: 'heads-in-heading',
    leg: 'downwind',
    name: 'heading with heads in',
    measures: 'heading lost while heads were in for the check',
    unit: DEG,
    say: { high: HEADS_IN },
    trainedBy: 'downwind-and-checks',
    good: 3,
    bad: 30,
    measure: (c) => headsIn(c, (fact) => degFromRad(fact.headingLostRad)),
    against: (_, limits) => atMost(0, limits.trackDeg),
  },
  rule({
    id: 'subscale',
    leg: 'downwind',
    name: 'altimeter on QNH',
    measures: 'altimeter subscale from the QNH when base was turned',
    unit: plain('hPa'),
    limits: { subscaleHpa: { title: 'subscale, hPa', ...practice(1, 1) } },
    say: {
      low: 'The altimeter was not on QNH: 1 hPa is some 27 ft, and the circuit flown lower than shown.',
      high: 'The altimeter was not on QNH: 1 hPa is some 27 ft, and the circuit is flown lower than shown.',
    },
    trainedBy: 'downwind-and-checks',
    good: 0,
    bad: 6,
    measure: (c) => {
      const p = proceduresOf(c);
      const qnhHpa = c.lesson.procedures?.qnhHpa;
      if (p === null || qnhHpa === undefined || turnOntoLeg(c, 'base') === null) return undefined;
      return p.subscaleHpa - qnhHpa;
    },
    against: (_, limits) => around(0, limits.subscaleHpa),
  }),
  {
    id: 'brakes-found',
    leg: 'downwind',
    name: 'brakes tried',
    measures: 'brakes without pressure, found before the landing',
    unit: plain('found'),
    say: { low: 'The brakes had no pressure, and it was found on the runway: try them on downwind.' },
    trainedBy: 'downwind-and-checks',
    good: 1,
    bad: 0,
    measure: (c) => {
      const p = proceduresOf(c);
      if (p === null || !c.lesson.procedures?.brakesFail || c.touchdown === null) return undefined;
      // Begun past downwind there was no check to find it by
      if (listOf(c, 'downwind') === null) return undefined;
      return p.lists.some(({ items }) => items.some(({ note }) => note === NO_PRESSURE)) ? 1 : 0;
    },
    against: () => ({ target: 1, low: 1, high: 1, source: `${PRACTICE}: brakes tried on downwind` }),
  },
  lookoutRow(
    'crosswind',
    'take-off-and-climb',
    'Look out before the turn: away from it, ahead, and last where you turn.',
  ),
  lookoutRow('downwind', 'take-off-and-climb', 'Look out before the turn, and for traffic joining downwind.'),
  lookoutRow(
    'base',
    'base-and-final',
    'Before base look away from the turn, ahead, and along long final; then turn.',
  ),
  lookoutRow(
    'final',
    'base-and-final',
    'Before final look along the approach and for the opposite base; then turn.',
  ),
  rule({
    id: 'calls',
    leg: 'downwind',
    name: 'calls made',
    alone: true,
    measures: 'calls made at their place and in their words',
    unit: PERCENT,
    limits: { callsPercent: { title: 'calls, %', ...practice(30, 0, 'most calls at their place') } },
    say: { low: 'Who you call, who you are, where you are, what you intend: at its place, not later.' },
    trainedBy: 'downwind-and-checks',
    good: 100,
    bad: 30,
    measure: callsPercent,
    against: (_, limits) => around(100, limits.callsPercent),
  }),
  rule({
    id: 'read-back',
    leg: 'downwind',
    name: 'reading back',
    measures: 'longest from the words of the tower to the right answer',
    unit: S,
    limits: { readBackS: { title: 'read back, s', ...practice(0, 10, 'answered within ten seconds') } },
    say: { high: 'Clearances are read back with the runway, at once; "roger" is no read-back.' },
    trainedBy: 'extend-orbit-number-two',
    good: 5,
    bad: 60,
    measure: readBackS,
    against: (_, limits) => atMost(0, limits.readBackS),
  }),
  {
    id: 'clearance',
    leg: 'final',
    name: 'runway used without a clearance',
    measures: 'runway used without a clearance',
    unit: TIMES,
    say: { high: "The runway is the tower's: no clearance, no take-off and no landing." },
    trainedBy: 'final-and-landing',
    good: 0,
    bad: 1,
    measure: (c) => {
      if (c.lesson.procedures?.radio !== 'towered') return undefined;
      return proceduresOf(c)?.uncleared.filter(({ circuit }) => circuit === c.circuit).length;
    },
    against: () => ({ target: 0, low: 0, high: 0, source: 'ICAO Annex 2: cleared to take off and to land' }),
  },
  rule({
    id: 'spacing-ahead',
    leg: 'downwind',
    name: 'distance to the one ahead',
    measures: 'nearest to another aeroplane in the air',
    unit: M,
    limits: {
      spacingAheadM: {
        title: 'spacing ahead, m',
        ...practice(700, 0, 'about four tenths of a nautical mile'),
      },
    },
    say: { low: 'Too close to the one ahead: extend, widen or slow down early; in doubt go around.' },
    trainedBy: 'extend-orbit-number-two',
    good: 1200,
    bad: 200,
    measure: (c) => proceduresOf(c)?.nearest.find(({ circuit }) => circuit === c.circuit)?.metres,
    against: (_, { spacingAheadM }) => ({
      target: spacingAheadM.below,
      low: spacingAheadM.below,
      high: null,
      source: spacingAheadM.source,
    }),
  }),
];

/** Beside the flying: checks, calls, lookout, spacing. */
export const PROCEDURE_RULES: readonly Rule[] = ROWS.map((row) => ({ ...row, besideFlying: true }));
