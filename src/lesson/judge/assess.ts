import { degFromRad, fpmFromMps, ftFromM, ktFromMps } from '../../units/conversions.ts';
import { baseTurnAngleRad, type Lesson } from '../lesson.ts';
import { type Measure, meanOf } from '../measure.ts';
import type { GateFact, LessonMemory, Stretch, TouchdownFact, TurnFact } from '../memory.ts';
import { rounded } from '../rounded.ts';
import { type CircuitFacts, circuitFacts } from '../watch/facts.ts';
import { angleBehindWingRad } from '../watch/turns.ts';
import { causesOf } from './causes.ts';
import { judgeCircuit, judgeSession } from './judge.ts';
import type {
  GateReport,
  GoAroundReport,
  ItemReport,
  LegReport,
  Report,
  Spread,
  TouchdownReport,
  TurnReport,
} from './report.ts';
import { DEFAULT_TOLERANCES, type ToleranceSet } from './tolerances.ts';

const spread = (m: Measure, convert: (si: number) => number, decimals: number): Spread | null => {
  const mean = meanOf(m);
  if (mean === null) return null;
  return {
    mean: rounded(convert(mean), decimals),
    min: rounded(convert(m.min), decimals),
    max: rounded(convert(m.max), decimals),
  };
};
const same = (x: number): number => x;

const legReport = (s: Stretch): LegReport => ({
  circuit: s.circuit,
  leg: s.leg,
  from_s: rounded(s.fromS, 2),
  to_s: rounded(s.toS, 2),
  height_ft: spread(s.heightM, ftFromM, 1),
  ias_kt: spread(s.iasMps, ktFromMps, 1),
  bank_deg: spread(s.bankRad, degFromRad, 1),
  track_error_m: spread(s.trackErrorM, same, 1),
});

const turnReport = (t: TurnFact, lesson: Lesson, endS: number): TurnReport => ({
  circuit: t.circuit,
  onto: t.onto,
  from_s: rounded(t.fromS, 2),
  to_s: rounded(t.toS ?? endS, 2),
  bank_deg: {
    mean: rounded(degFromRad(meanOf(t.bankRad) ?? 0), 1),
    max: rounded(degFromRad(t.bankRad.max), 1),
  },
  overshoot_m: t.onto === 'final' ? rounded(t.overshootM, 1) : null,
  angle_behind_wing_deg: t.onto === 'base' ? rounded(degFromRad(angleBehindWingRad(t)), 1) : null,
  planned_angle_deg: t.onto === 'base' ? rounded(degFromRad(baseTurnAngleRad(lesson, t.fromS)), 1) : null,
});

const gateReport = (g: GateFact): GateReport => ({
  circuit: g.circuit,
  height_ft: g.heightFt,
  at_s: rounded(g.atS, 2),
  slope_deg: rounded(degFromRad(g.slopeRad), 2),
  lights: g.lights,
  ias_kt: rounded(ktFromMps(g.iasMps), 1),
  sink_fpm: rounded(fpmFromMps(g.sinkMps), 0),
  centreline_m: rounded(g.centrelineM, 1),
  bank_deg: rounded(degFromRad(g.bankRad), 1),
  stabilised: g.why.length === 0,
  why: [...g.why],
  faults: [...(g.faults ?? [])],
});

const touchdownReport = (t: TouchdownFact, lesson: Lesson): TouchdownReport => ({
  circuit: t.circuit,
  at_s: rounded(t.atS, 3),
  past_threshold_m: rounded(t.alongM, 1),
  past_aim_m: rounded(t.alongM - lesson.runway.aimM, 1),
  past_specified_m: rounded(t.alongM - lesson.runway.specifiedM, 1),
  sink_fpm: rounded(fpmFromMps(t.sinkMps), 0),
  ias_kt: rounded(ktFromMps(t.iasMps), 1),
  centreline_m: rounded(t.acrossM, 2),
  crab_deg: rounded(degFromRad(t.crabRad), 1),
  drift_kt: rounded(ktFromMps(t.driftMps), 1),
  pitch_deg: rounded(degFromRad(t.pitchRad), 1),
  bounces: t.bounces,
});

const goAroundReports = (m: LessonMemory): GoAroundReport[] => {
  const flown = m.goArounds.map((g) => ({
    at_s: rounded(g.atS, 2),
    height_ft: rounded(ftFromM(g.heightM), 1),
    due_at_s: g.dueS === null ? null : rounded(g.dueS, 2),
    why: g.why,
    due: g.due ?? null,
    circuit: g.circuit,
    gate_ft: null,
  }));
  const missed = m.dues
    .filter((d) => d.ignored && !d.answered)
    .map((d) => ({
      at_s: null,
      height_ft: null,
      due_at_s: rounded(d.dueS, 2),
      why: d.why,
      due: d.id ?? 'asked',
      circuit: d.circuit,
      gate_ft: d.gateFt,
    }));
  return [...flown, ...missed];
};

const shown = (item: ItemReport): ItemReport => ({
  ...item,
  value: item.value === null ? null : rounded(item.value, 2),
  target: item.target === null ? null : rounded(item.target, 2),
  low: item.low === null ? null : rounded(item.low, 2),
  high: item.high === null ? null : rounded(item.high, 2),
});

const circuitsOf = (m: LessonMemory, lesson: Lesson): readonly CircuitFacts[] => {
  const flown = new Set([...m.stretches, m.now].map(({ circuit }) => circuit));
  return [...flown].map((circuit) => circuitFacts(m, lesson, circuit));
};

const itemReports = (circuits: readonly CircuitFacts[], limits: ToleranceSet): ItemReport[] =>
  [...circuits.flatMap((circuit) => judgeCircuit(circuit, limits)), ...judgeSession(circuits, limits)].map(
    shown,
  );

/** What the flight so far comes down to. The one function for the live card and the debrief: same memory, same numbers. */
export const assess = (
  m: LessonMemory,
  lesson: Lesson,
  limits: ToleranceSet = DEFAULT_TOLERANCES,
): Report => {
  const circuits = circuitsOf(m, lesson);
  const items = itemReports(circuits, limits);
  return {
    legs: [...m.stretches, m.now].map(legReport),
    turns: m.turns.map((t) => turnReport(t, lesson, m.endS)),
    gates: m.gates.map(gateReport),
    go_arounds: goAroundReports(m),
    touchdowns: m.touchdowns.map((t) => touchdownReport(t, lesson)),
    stop:
      m.stop === null
        ? null
        : {
            past_threshold_m: rounded(m.stop.alongM, 1),
            remaining_m: rounded(lesson.runway.surfaceEndM - m.stop.alongM, 1),
            centreline_m: rounded(m.stop.acrossM, 1),
          },
    ran_off: m.ranOff ? (m.ranOffAt ?? null) : null,
    items,
    safety: m.safety.map((s) => ({ id: s.id, at_s: rounded(s.atS, 2), what: s.what })),
    causes: circuits.flatMap((circuit) => causesOf(circuit, items)),
  };
};
