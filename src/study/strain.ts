import type { ToleranceSet } from '../lesson/judge/tolerances.ts';
import { lastWhere } from '../lesson/last-where.ts';
import type { Lesson } from '../lesson/lesson.ts';
import type { GateFact, LessonMemory } from '../lesson/memory.ts';
import { clamp, tan } from '../maths/functions.ts';
import { ktFromMps, mFromFt, mpsFromFpm, radFromDeg } from '../units/conversions.ts';

/**
 * How near a gate was to the edges of what is allowed there, as signed shares of it: 1 is the edge. + high, right
 * of the centreline, fast, sinking. Whether it was stabilised is for the lesson to say; this only says how nearly.
 */
export type Strain = Readonly<Record<(typeof STRAINS)[number], number>>;
export const STRAINS = ['slope', 'centreline', 'speed', 'sink'] as const;

/** As in the lesson's gates (src/lesson/gates.ts), where the sources stand. */
const SLOPE_RAD = radFromDeg(0.5);
const CENTRELINE_RATIO = 0.035;
const SINK_MPS = mpsFromFpm(700);
const SINK_ABOVE_PLAN_MPS = mpsFromFpm(300);
const FLATTEST_RAD = radFromDeg(0.5);

export const strainAt = (gate: GateFact, lesson: Lesson, limits: ToleranceSet): Strain => {
  const { plan, runway } = lesson;
  const distanceM = mFromFt(gate.heightFt) / tan(clamp(gate.slopeRad, FLATTEST_RAD, 1.5));
  const offKt = ktFromMps(gate.iasMps - plan.approachIasMps);
  const { above, below } = limits.allowed.approachSpeedKt;
  return {
    slope: (gate.slopeRad - plan.approachRad) / SLOPE_RAD,
    centreline: gate.centrelineM / Math.max(runway.widthM / 2, CENTRELINE_RATIO * distanceM),
    speed: offKt / (offKt > 0 ? above : below),
    sink: gate.sinkMps / Math.max(SINK_MPS, SINK_ABOVE_PLAN_MPS - plan.legs.final.verticalSpeedMps),
  };
};

/** Of a gate of a circuit, passed after a time; null where there was none. */
export const strainOf = (
  m: LessonMemory,
  lesson: Lesson,
  limits: ToleranceSet,
  at: { readonly circuit: number; readonly heightFt: number; readonly fromS: number },
): Strain | null => {
  const gate = lastWhere(
    m.gates,
    (g) => g.circuit === at.circuit && g.heightFt === at.heightFt && g.atS >= at.fromS,
  );
  return gate === null ? null : strainAt(gate, lesson, limits);
};
