import { atan2 } from '../maths/functions.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps } from '../units/conversions.ts';
import { bandOf } from './bands.ts';
import { lastWhere } from './last-where.ts';
import type { Lesson } from './lesson.ts';
import { farthestFrom, meanOf } from './measure.ts';
import type { LessonMemory, Stretch, TouchdownFact, TurnFact } from './memory.ts';
import type { LegName } from './names.ts';
import type { ItemReport } from './report.ts';
import type { Limit, ToleranceSet } from './tolerances.ts';

/** What one circuit left behind, for the rows to look at. */
export interface CircuitFacts {
  readonly circuit: number;
  readonly stretches: readonly Stretch[];
  readonly turns: readonly TurnFact[];
  readonly touchdown: TouchdownFact | null;
  readonly m: LessonMemory;
  readonly lesson: Lesson;
}

/** A measured value against its target. */
interface Judged {
  readonly value: number | null;
  readonly target: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly source: string;
  /** Closest end of amber on the low side. */
  readonly amberLow?: number;
  /** Nothing to judge by, although there is a value. */
  readonly unjudged?: boolean;
}

/** A row of the table of items: what is looked at, in which unit, and how. Null: this circuit had no such thing. */
export interface ItemRow {
  readonly id: string;
  readonly leg: LegName;
  readonly unit: string;
  judge(c: CircuitFacts, limits: ToleranceSet): Judged | null;
}

const around = (value: number | null, target: number, limit: Limit): Judged => ({
  value,
  target,
  low: target - limit.below,
  high: target + limit.above,
  source: limit.source,
});

const within = (
  value: number | null,
  target: number,
  low: number | null,
  high: number | null,
  source: string,
): Judged => ({
  value,
  target,
  low,
  high,
  source,
});

const PRACTICE = 'common practice';
const kt = (mps: number | null): number | null => (mps === null ? null : ktFromMps(mps));
const ft = (m: number | null): number | null => (m === null ? null : ftFromM(m));

const lastStretch = (c: CircuitFacts, leg: LegName): Stretch | null =>
  lastWhere(c.stretches, (stretch) => stretch.leg === leg);
const turnOntoLeg = (c: CircuitFacts, onto: TurnFact['onto']): TurnFact | null =>
  lastWhere(c.turns, (turn) => turn.onto === onto);

type Planned = 'upwind' | 'crosswind' | 'downwind' | 'base' | 'final';

/** Height where the next turn begins, against the plan's height there. */
const heightAtTurn = (leg: LegName, onto: TurnFact['onto']): ItemRow => ({
  id: `${leg}-height`,
  leg,
  unit: 'ft',
  judge: (c, limits) => {
    const turn = turnOntoLeg(c, onto);
    if (turn === null || lastStretch(c, leg) === null) return null;
    return around(
      ftFromM(turn.fromHeightM),
      ftFromM(c.lesson.plan.turns[onto].from.heightM),
      limits.heightFt,
    );
  },
});

const speedOn = (leg: Planned, which: 'circuitSpeedKt' | 'climbSpeedKt'): ItemRow => ({
  id: `${leg}-speed`,
  leg,
  unit: 'kt',
  judge: (c, limits) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return null;
    const targetMps = c.lesson.plan.legs[leg].iasMps;
    return around(kt(farthestFrom(stretch.settledIasMps, targetMps)), ktFromMps(targetMps), limits[which]);
  },
});

const trackOn = (leg: Planned): ItemRow => ({
  id: `${leg}-track`,
  leg,
  unit: 'deg',
  judge: (c, limits) => {
    const stretch = lastStretch(c, leg);
    if (stretch === null) return null;
    const mean = meanOf(stretch.trackOffRad);
    return around(mean === null ? null : degFromRad(mean), 0, limits.trackDeg);
  },
});

const bankOf = (onto: TurnFact['onto'], limitDeg: number, source: string): ItemRow => ({
  id: `turn-to-${onto}-bank`,
  leg: `turn-to-${onto}`,
  unit: 'deg',
  judge: (c) => {
    const turn = turnOntoLeg(c, onto);
    if (turn === null || turn.bankRad.count === 0) return null;
    const target = degFromRad(c.lesson.plan.turns[onto].bankRad);
    return within(degFromRad(turn.bankRad.max), Math.abs(target), null, limitDeg, source);
  },
});

const atTouchdown = (
  id: string,
  unit: string,
  judge: (t: TouchdownFact, c: CircuitFacts, limits: ToleranceSet) => Judged,
): ItemRow => ({
  id: `touchdown-${id}`,
  leg: 'landing-roll',
  unit,
  judge: (c, limits) => (c.touchdown === null ? null : judge(c.touchdown, c, limits)),
});

const SA_BANK = 'South African instructor training procedures: 30 deg, balanced';

/** The table of what is assessed. One row a rule. */
export const ITEM_ROWS: readonly ItemRow[] = [
  {
    id: 'take-off-roll-centreline',
    leg: 'take-off-roll',
    unit: 'm',
    judge: (c) => {
      const run = lastStretch(c, 'take-off-roll');
      if (run === null) return null;
      const limit = c.lesson.runway.widthM / 4;
      return within(farthestFrom(run.trackErrorM, 0), 0, -limit, limit, PRACTICE);
    },
  },
  heightAtTurn('upwind', 'crosswind'),
  speedOn('upwind', 'climbSpeedKt'),
  trackOn('upwind'),
  bankOf('crosswind', 25, PRACTICE),
  heightAtTurn('crosswind', 'downwind'),
  speedOn('crosswind', 'circuitSpeedKt'),
  trackOn('crosswind'),
  {
    id: 'downwind-height',
    leg: 'downwind',
    unit: 'ft',
    judge: (c, limits) => {
      const leg = lastStretch(c, 'downwind');
      if (leg === null) return null;
      const target = c.lesson.plan.heightM;
      return around(ft(farthestFrom(leg.levelHeightM, target)), ftFromM(target), limits.heightFt);
    },
  },
  speedOn('downwind', 'circuitSpeedKt'),
  trackOn('downwind'),
  {
    id: 'downwind-spacing',
    leg: 'downwind',
    unit: 'm',
    judge: (c) => {
      const leg = lastStretch(c, 'downwind');
      if (leg === null) return null;
      const { spacingM } = c.lesson.plan;
      const mean = meanOf(leg.trackErrorM);
      // The error is + right of the leg: on a left-hand downwind that is further out.
      const value = mean === null ? null : spacingM - c.lesson.plan.side * mean;
      return within(value, spacingM, 0.75 * spacingM, 1.25 * spacingM, PRACTICE);
    },
  },
  {
    id: 'base-turn-angle',
    leg: 'turn-to-base',
    unit: 'deg',
    judge: (c) => {
      const turn = turnOntoLeg(c, 'base');
      if (turn === null) return null;
      const target = degFromRad(c.lesson.plan.baseTurnAngleRad);
      const source =
        'about 45 deg in nil wind (FAA-H-8083-3C chapter 8), wind-corrected; ±5 deg common practice';
      return within(degFromRad(angleBehindWingRad(turn)), target, target - 5, target + 5, source);
    },
  },
  bankOf('base', 30, SA_BANK),
  heightAtTurn('base', 'final'),
  speedOn('base', 'circuitSpeedKt'),
  trackOn('base'),
  bankOf('final', 30, SA_BANK),
  {
    id: 'final-overshoot',
    leg: 'turn-to-final',
    unit: 'm',
    judge: (c) => {
      const turn = turnOntoLeg(c, 'final');
      return turn === null ? null : within(turn.overshootM, 0, null, 50, PRACTICE);
    },
  },
  {
    id: 'final-height',
    leg: 'final',
    unit: 'ft',
    judge: (c, limits) => {
      const turn = turnOntoLeg(c, 'final');
      const leg = lastStretch(c, 'final');
      if (turn === null || leg === null) return null;
      return around(ft(leg.fromHeightM), ftFromM(c.lesson.plan.rollOutOnFinalHeightM), limits.heightFt);
    },
  },
  {
    id: 'final-speed',
    leg: 'final',
    unit: 'kt',
    judge: (c, limits) => {
      const leg = lastStretch(c, 'final');
      if (leg === null) return null;
      const targetMps = c.lesson.plan.approachIasMps;
      const target = ktFromMps(targetMps);
      const value = kt(farthestFrom(leg.settledIasMps, targetMps));
      // On the low side amber ends at the greater of target - 7.5 kt and 1.2 Vs.
      const stalling = ktFromMps(leg.endStallIasMps);
      return {
        ...around(value, target, limits.approachSpeedKt),
        amberLow: Math.max(target - 7.5, 1.2 * stalling),
      };
    },
  },
  trackOn('final'),
  gateRow(500),
  gateRow(300),
  gateRow(200),
  {
    id: 'go-around',
    leg: 'go-around',
    unit: 'ignored',
    judge: (c) => {
      const mine = c.m.dues.filter((d) => d.circuit === c.circuit);
      const flown = c.m.goArounds.some((g) => g.circuit === c.circuit);
      if (mine.length === 0 && !flown) return null;
      const ignored = mine.filter((d) => d.ignored).length;
      return within(ignored, 0, 0, 0, 'FAA-S-ACS-6 IV.N: a go-around in time; a go-around is never wrong');
    },
  },
  atTouchdown('point', 'ft', (t, c, limits) =>
    around(ftFromM(t.alongM - c.lesson.runway.specifiedM), 0, limits.touchdownFt),
  ),
  atTouchdown('sink', 'ft/min', (t) => within(fpmFromMps(t.sinkMps), 100, null, 240, PRACTICE)),
  atTouchdown('centreline', 'm', (t, c) => {
    const limit = c.lesson.runway.widthM / 4;
    return within(
      t.acrossM,
      0,
      -limit,
      limit,
      'FAA-S-ACS-6 IV.B: over the centreline; a quarter of the width common practice',
    );
  }),
  atTouchdown('drift', 'kt', (t) =>
    within(ktFromMps(t.driftMps), 0, -2, 2, 'FAA-S-ACS-6 IV.B: no side drift; ±2 kt common practice'),
  ),
  atTouchdown('crab', 'deg', (t) =>
    within(degFromRad(t.crabRad), 0, -5, 5, 'FAA-S-ACS-6 IV.B: axis aligned; ±5 deg common practice'),
  ),
  atTouchdown('bounces', 'bounces', (t) => within(t.bounces, 0, 0, 0, PRACTICE)),
  {
    id: 'landing-roll-centreline',
    leg: 'landing-roll',
    unit: 'm',
    judge: (c) => {
      const roll = lastStretch(c, 'landing-roll');
      if (roll === null) return null;
      const limit = c.lesson.runway.widthM / 4;
      return within(farthestFrom(roll.trackErrorM, 0), 0, -limit, limit, PRACTICE);
    },
  },
  {
    id: 'stop-remaining',
    leg: 'stopped',
    unit: 'm',
    judge: (c) => {
      const { stop } = c.m;
      if (stop === null || c.touchdown === null) return null;
      const left = c.lesson.runway.surfaceEndM - stop.alongM;
      return within(left, 0, 0, null, 'the landing is over when stopped on the runway');
    },
  },
];

function gateRow(heightFt: number): ItemRow {
  return {
    id: `gate-${heightFt}`,
    leg: 'final',
    unit: 'faults',
    judge: (c) => {
      const gate = lastWhere(c.m.gates, (g) => g.circuit === c.circuit && g.heightFt === heightFt);
      if (gate === null) return null;
      const source =
        'stabilised: Flight Safety Foundation ALAR 7.1 and FAA-S-ACS-6 IV.B, gates by common practice';
      return { ...within(gate.why.length, 0, 0, 0, source), unjudged: !gate.decides };
    },
  };
}

/** How far behind the wing the threshold stood where a turn began, on the ground: 0 abeam. */
export const angleBehindWingRad = (turn: TurnFact): number =>
  atan2(-turn.fromAlongM, Math.max(1, Math.abs(turn.fromOutM)));

export const judgeItems = (c: CircuitFacts, limits: ToleranceSet): ItemReport[] => {
  const items: ItemReport[] = [];
  for (const row of ITEM_ROWS) {
    const judged = row.judge(c, limits);
    if (judged === null) continue;
    const { value, target, low, high, source, amberLow, unjudged } = judged;
    items.push({
      id: c.circuit === 1 ? row.id : `${row.id}-${c.circuit}`,
      leg: row.leg,
      value,
      unit: row.unit,
      target,
      low,
      high,
      band: unjudged === true ? 'not-judged' : bandOf(value, target, low, high, amberLow),
      source,
    });
  }
  return items;
};
