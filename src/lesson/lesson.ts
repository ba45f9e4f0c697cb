import { acrossM, alongM, type Runway } from '../aerodrome/runway.ts';
import { newSeenLights, type SeenLights } from '../aerodrome/slope-lights.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan } from '../circuit/types.ts';
import { cos, mix, sin } from '../maths/functions.ts';
import type { Procedures } from '../simulation/procedures.ts';
import { PLAIN_TASK, type Task } from '../simulation/task.ts';
import { mFromFt } from '../units/conversions.ts';
import type { CircuitBounds } from './watch/legs.ts';
import { newWhere, type Where } from './watch/where.ts';

/** A planned leg as a line on the ground, ready to measure against. */
export interface LegLine {
  readonly eastM: number;
  readonly northM: number;
  readonly sinTrack: number;
  readonly cosTrack: number;
  readonly trackRadT: number;
}

/** What surrounds the flying, with what is needed to speak of it. */
export interface LessonProcedures extends Procedures {
  /** The aerodrome, as it is called. */
  readonly place: string;
  readonly qnhHpa: number;
  readonly windFromDegM: number;
  readonly windKt: number;
  /** The brakes will not hold: there to be found by trying them. */
  readonly brakesFail: boolean;
  readonly seed: number;
}

/** What a flight is measured against; fixed before the first step. The two scratch objects carry nothing over. */
export interface Lesson {
  readonly aeroplane: Aeroplane;
  readonly runway: Runway;
  readonly plan: CircuitPlan;
  readonly bounds: CircuitBounds;
  readonly lines: Readonly<Record<CircuitLeg, LegLine>>;
  readonly where: Where;
  readonly seen: SeenLights;
  /** Rows of the rules that are looked at; null: all of them. */
  readonly assessed: readonly string[] | null;
  readonly task: Task;
  /** The assist keeps the balance: nothing to judge the feet by. */
  readonly rudderAssist: boolean;
  /** The base turn in the wind that the day gets to, and when; null where the wind stays. */
  readonly later: { readonly baseTurnAngleRad: number; readonly overS: number } | null;
  /** Null: nothing is checked, called or looked out for. */
  readonly procedures: LessonProcedures | null;
}

/** What a lesson may be given beside aeroplane, runway and plan. */
export type LessonOptions = Partial<
  Pick<Lesson, 'assessed' | 'task' | 'rudderAssist' | 'later' | 'procedures'>
>;

/** Angle behind the wing at which to turn base, in the wind of that time. */
export const baseTurnAngleRad = ({ plan, later }: Lesson, timeS: number): number =>
  later === null
    ? plan.baseTurnAngleRad
    : mix(plan.baseTurnAngleRad, later.baseTurnAngleRad, Math.min(1, timeS / later.overS));

/** How far beyond the planned path the circuit's airspace goes (common practice: about 2 NM and 1,000 ft). */
const MARGIN_M = 3700;
const MARGIN_UP_M = mFromFt(1000); // common practice, as above

const boundsOf = (runway: Runway, plan: CircuitPlan): CircuitBounds => {
  let alongLowM = 0;
  let alongHighM = runway.surfaceEndM;
  let outLowM = 0;
  let outHighM = plan.spacingM;
  for (const point of plan.path) {
    const along = alongM(runway, point.eastM, point.northM);
    const out = plan.side * acrossM(runway, point.eastM, point.northM);
    alongLowM = Math.min(alongLowM, along);
    alongHighM = Math.max(alongHighM, along);
    outLowM = Math.min(outLowM, out);
    outHighM = Math.max(outHighM, out);
  }
  return {
    alongLowM: alongLowM - MARGIN_M,
    alongHighM: alongHighM + MARGIN_M,
    outLowM: outLowM - MARGIN_M,
    outHighM: outHighM + MARGIN_M,
    highM: plan.heightM + MARGIN_UP_M,
    runwayLengthM: runway.landingLengthM,
    runwayEndM: runway.surfaceEndM,
    circuitM: plan.heightM,
  };
};

const lineOf = (plan: CircuitPlan, leg: CircuitLeg): LegLine => {
  const { from, trackRadT } = plan.legs[leg];
  return {
    eastM: from.eastM,
    northM: from.northM,
    sinTrack: sin(trackRadT),
    cosTrack: cos(trackRadT),
    trackRadT,
  };
};

/** The lesson of one circuit plan, with this aeroplane on this runway. */
export const createLesson = (
  aeroplane: Aeroplane,
  runway: Runway,
  plan: CircuitPlan,
  options: LessonOptions = {},
): Lesson => ({
  aeroplane,
  runway,
  plan,
  bounds: boundsOf(runway, plan),
  lines: Object.fromEntries(CIRCUIT_LEGS.map((leg) => [leg, lineOf(plan, leg)])) as Record<
    CircuitLeg,
    LegLine
  >,
  where: newWhere(),
  seen: newSeenLights(),
  assessed: null,
  task: PLAIN_TASK,
  rudderAssist: false,
  later: null,
  procedures: null,
  ...options,
});
