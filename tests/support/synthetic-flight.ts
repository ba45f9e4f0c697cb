import { groundHeightM, onSurface } from '../../src/aerodrome/runway.ts';
import type { CircuitPlan, PathPoint } from '../../src/circuit/types.ts';
import type { Options } from '../../src/headless/options.ts';
import { planOf, scenarioFrom } from '../../src/headless/scenario.ts';
import { DEFAULT_TOLERANCES, type ToleranceSet } from '../../src/lesson/judge/tolerances.ts';
import { createLesson, type Lesson } from '../../src/lesson/lesson.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import type { LegName } from '../../src/lesson/names.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { newSnapshot, type Snapshot } from '../../src/simulation/snapshot.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../src/units/conversions.ts';

/**
 * A flight drawn by hand, without physics: what the lesson sees when an aeroplane slides along a line of
 * points. The tests decide what it does; the detection has to find the names.
 */
export interface Moment {
  readonly eastM: number;
  readonly northM: number;
  /** Wheels above the threshold. */
  readonly heightM: number;
  readonly speedMps: number;
  readonly turning?: boolean;
  readonly throttle?: number;
  readonly onGround?: boolean;
  /** Seconds spent standing here. */
  readonly standS?: number;
}

export const lessonOf = (options: Options = {}): { lesson: Lesson; plan: CircuitPlan } => {
  const scenario = scenarioFrom(options, '.');
  const plan = planOf(scenario);
  return { lesson: createLesson(scenario.aeroplane, plan.runway, plan), plan };
};

/** The planned path as it would be flown: full power up, idle down, standing at both ends. */
export const plannedMoments = (plan: CircuitPlan): Moment[] =>
  plan.path.map((point, i) => {
    const roll = point.leg === 'take-off-roll' || point.leg === 'landing-roll';
    const last = i === plan.path.length - 1;
    return {
      eastM: point.eastM,
      northM: point.northM,
      heightM: point.heightM,
      speedMps: roll ? (last || i === 0 ? 8 : 20) : mpsFromKt(70),
      turning: point.turning,
      throttle: powerOn(point),
      onGround: roll && point.heightM - groundHeightM(plan.runway, alongOf(plan, point)) < 0.5,
      standS: i === 0 || last ? 4 : 0,
    };
  });

const alongOf = ({ runway }: CircuitPlan, point: PathPoint): number =>
  point.eastM * runway.sinHeading + point.northM * runway.cosHeading;

const powerOn = (point: PathPoint): number => {
  if (point.leg === 'take-off-roll' || point.leg === 'upwind' || point.leg === 'crosswind') return 1;
  return point.leg === 'landing-roll' ? 0 : 0.5;
};

const STEP_S = 1 / 60;

export interface Seen {
  readonly memory: LessonMemory;
  /** Every change of leg in order. */
  readonly legs: readonly LegName[];
  readonly circuits: readonly number[];
  /** Shortest time between two changes. */
  readonly shortestS: number;
}

/** Slides along the moments and shows every step to the lesson. `shake` adds bank, as rough air does. */
export const watchMoments = (
  lesson: Lesson,
  moments: readonly Moment[],
  shake: (timeS: number) => number = () => 0,
  change: (s: Snapshot) => void = () => {},
  limits: ToleranceSet = DEFAULT_TOLERANCES,
): Seen => {
  const { runway, plan } = lesson;
  const fold = createLessonFold(lesson, limits);
  const s = newSnapshot();
  let memory: LessonMemory | null = null;
  const legs: LegName[] = [];
  const circuits: number[] = [];
  let lastChangeS = -100;
  let shortestS = 1e9;
  let before: { heightM: number } | null = null;
  let bankRad = 0;
  const show = (): void => {
    change(s);
    if (memory === null) memory = fold.begin(s);
    else fold.step(memory, s);
    const { leg, circuit } = memory.legs;
    if (leg === legs.at(-1)) return;
    legs.push(leg);
    circuits.push(circuit);
    shortestS = Math.min(shortestS, s.timeS - lastChangeS);
    lastChangeS = s.timeS;
  };
  const put = (m: Moment, to: Moment, share: number, speedMps: number): void => {
    s.timeS = s.step / 60;
    s.eastM = m.eastM + share * (to.eastM - m.eastM);
    s.northM = m.northM + share * (to.northM - m.northM);
    s.heightM = m.heightM + share * (to.heightM - m.heightM);
    const along = s.eastM * runway.sinHeading + s.northM * runway.cosHeading;
    const across = s.eastM * runway.cosHeading - s.northM * runway.sinHeading;
    s.onGround = m.onGround === true && to.onGround === true;
    s.wheelClearanceM = s.onGround ? -0.08 : Math.max(0.01, s.heightM - groundHeightM(runway, along));
    s.onRunway = onSurface(runway, along, across);
    s.groundspeedMps = speedMps;
    const far = Math.hypot(to.eastM - m.eastM, to.northM - m.northM);
    if (speedMps > 0 && far > 0) s.trackRadT = Math.atan2(to.eastM - m.eastM, to.northM - m.northM);
    s.headingRadT = s.trackRadT;
    s.velocityEastMps = speedMps * Math.sin(s.trackRadT);
    s.velocityNorthMps = speedMps * Math.cos(s.trackRadT);
    s.verticalSpeedMps = before === null ? 0 : (s.heightM - before.heightM) / STEP_S;
    s.indicatedVerticalSpeedMps = s.verticalSpeedMps;
    before = { heightM: s.heightM };
    const wanted = m.turning === true ? plan.side * radFromDeg(20) : 0;
    const most = radFromDeg(10) * STEP_S;
    bankRad += Math.max(-most, Math.min(most, wanted - bankRad));
    s.bankRad = bankRad + (s.onGround ? 0 : shake(s.timeS));
    s.iasMps = plan.approachIasMps;
    s.tasMps = s.iasMps;
    s.stallIasMps = mpsFromKt(45);
    s.throttle = m.throttle ?? 0.5;
    s.flapStage = lesson.aeroplane.plan.finalStage;
    s.engineRevps = 30;
    s.loadFactor = 1;
    s.parked = speedMps === 0;
    s.eyeEastM = s.eastM;
    s.eyeNorthM = s.northM;
    s.eyeHeightM = s.heightM + mFromFt(6);
    show();
    s.step += 1;
  };
  moments.forEach((m, i) => {
    for (let n = 0; n < (m.standS ?? 0) * 60; n += 1) put(m, m, 0, 0);
    const to = moments[i + 1];
    if (to === undefined) return;
    const far = Math.hypot(to.eastM - m.eastM, to.northM - m.northM, to.heightM - m.heightM);
    const steps = Math.max(1, Math.round(far / m.speedMps / STEP_S));
    for (let n = 0; n < steps; n += 1) put(m, to, n / steps, m.speedMps);
  });
  if (memory === null) throw new Error('no moments');
  return { memory, legs, circuits, shortestS };
};
