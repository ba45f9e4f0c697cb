import type { CircuitLeg } from '../../circuit/types.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import { newMeasure, takeIn } from '../measure.ts';
import type { LessonMemory, Stretch } from '../memory.ts';
import { type LegName, turnOnto } from '../names.ts';

/** Seconds after a roll-out before speed, height and track are assessed, or spoken of (common practice). */
export const SETTLE_S = 8;
/** What is no longer level, on the leg, or straight through the air: estimates. */
const CLIMBING_MPS = 1;
const OFF_THE_LEG_RAD = radFromDeg(60); // estimate
const SLIPPING_RAD = radFromDeg(6); // estimate
/** Steady: wings level, speed still, for ten seconds (common practice; how level and how still, estimates). */
const STEADY_S = 10;
const STEADY_BANK_RAD = radFromDeg(5); // estimate
const STEADY_IAS_MPS = mpsFromKt(3); // estimate
const STEADY_ABOVE_M = mFromFt(200); // common practice
/** Below it the lamps run together, and above it the climb has settled (estimates). */
const LAMPS_ABOVE_M = mFromFt(200);
const CLIMB_FROM_M = mFromFt(200); // estimate
const STILL_BELOW_M = mFromFt(50); // estimate

/** Which planned leg a stretch is measured against; the rest is measured from the centreline. */
const PLANNED: Partial<Record<LegName, CircuitLeg>> = {
  upwind: 'upwind',
  crosswind: 'crosswind',
  downwind: 'downwind',
  base: 'base',
  final: 'final',
};

const ON_THE_CENTRELINE: ReadonlySet<LegName> = new Set([
  'line-up',
  'take-off-roll',
  'upwind',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
  'go-around',
]);

export const beginStretch = (circuit: number, leg: LegName, fromS: number, heightM: number): Stretch => ({
  circuit,
  leg,
  fromS,
  toS: fromS,
  heightM: newMeasure(),
  iasMps: newMeasure(),
  bankRad: newMeasure(),
  trackErrorM: newMeasure(),
  settledIasMps: newMeasure(),
  levelHeightM: newMeasure(),
  trackOffRad: newMeasure(),
  fromHeightM: heightM,
  endHeightM: heightM,
  endStallIasMps: 0,
  endFlapStage: 0,
  ball: newMeasure(),
  heldDegKpa: newMeasure(),
  lamps: newMeasure(),
  throttle: newMeasure(),
  settledRevps: newMeasure(),
  slippedS: 0,
  flapOverMps: 0,
});

/** How far the needle stands above the limit of the flap that is out, longer than a gust flicks it there. */
const flapOverMps = ({ aeroplane }: Lesson, m: LessonMemory, s: Readonly<Snapshot>): number => {
  if (s.flapDeg < 1) return 0;
  const limitKt = aeroplane.flap.stages[s.flapStage]?.limitKt;
  return limitKt === undefined || s.flapStage === 0
    ? 0
    : Math.min(s.iasMps, m.smoothIasMps) - mpsFromKt(limitKt);
};

const takeInTrim = (m: LessonMemory, s: Readonly<Snapshot>): void => {
  const steady =
    !s.onGround &&
    Math.abs(m.smoothBankRad) < STEADY_BANK_RAD &&
    Math.abs(s.iasMps - m.smoothIasMps) < STEADY_IAS_MPS &&
    s.wheelClearanceM > STEADY_ABOVE_M;
  m.steadyFromS = steady ? (m.steadyFromS ?? s.timeS) : null;
  if (m.steadyFromS !== null && s.timeS - m.steadyFromS > STEADY_S)
    takeIn(m.now.heldDegKpa, m.smoothHeldDegKpa);
};

/** Counted above 200 ft, inside the beam, and only where the planned path itself shows half and half. */
export const lampsNow = (m: LessonMemory, lesson: Lesson): number | null => {
  const { heightM } = lesson.where;
  const { lightsOnFinal } = lesson.plan;
  if (m.lights === '' || m.lights.includes('-') || lightsOnFinal === null || heightM < LAMPS_ABOVE_M)
    return null;
  const planned = lightsOnFinal.find((part) => heightM <= part.fromHeightM && heightM >= part.toHeightM);
  if (planned === undefined || lampsOff(planned.letters) !== 0) return null;
  return lampsOff(m.lights);
};

const takeInLamps = (m: LessonMemory, lesson: Lesson): void => {
  const off = lampsNow(m, lesson);
  if (off !== null) takeIn(m.now.lamps, off);
};

/** Lamps that show white beyond half of them; one in transition counts half. */
const lampsOff = (letters: string): number => {
  let whites = 0;
  for (const letter of letters) whites += letter === 'W' ? 1 : letter === 'P' ? 0.5 : 0;
  return whites - letters.length / 2;
};

const SCREEN_M = mFromFt(50); // definition: screen height

/** The climbing speed counts above 200 ft and as long as the climb goes on; on downwind only once it is over. */
const SPEED_IS_SETTLED: Partial<
  Record<CircuitLeg, (climbing: boolean, below: boolean, clearM: number) => boolean>
> = {
  upwind: (_, __, clearM) => clearM > CLIMB_FROM_M,
  crosswind: (climbing) => climbing,
  downwind: (climbing, below) => !(climbing && below),
  // Lower it is the round-out, wherever that was begun
  final: (_, __, clearM) => clearM > SCREEN_M,
};

/** Power counts while it is the leg's own: level on downwind, on final above the last call. */
const POWER_IS_SETTLED: Partial<Record<CircuitLeg, (level: boolean, s: Readonly<Snapshot>) => boolean>> = {
  downwind: (level) => level,
  base: () => true,
  final: (_, { heightM }) => heightM > LAMPS_ABOVE_M,
};

/** Adds one look to the stretch that is being flown. */
export const takeInLook = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const now = m.now;
  const { where } = lesson;
  now.toS = s.timeS;
  now.endHeightM = s.heightM;
  now.endStallIasMps = s.stallIasMps;
  now.endFlapStage = s.flapStage;
  now.flapOverMps = Math.max(now.flapOverMps, flapOverMps(lesson, m, s));
  takeIn(now.ball, Math.abs(m.smoothBall));
  takeIn(now.throttle, where.throttle);
  if (Math.abs(s.slipRad) > SLIPPING_RAD && !s.onGround) now.slippedS += s.timeS - m.lastS;
  takeIn(now.heightM, s.heightM);
  takeIn(now.iasMps, s.iasMps);
  takeIn(now.bankRad, s.bankRad);
  if (turnOnto(now.leg) !== null) return;
  takeInTrim(m, s);
  if (now.leg === 'final') takeInLamps(m, lesson);
  // In an orbit the aeroplane is off the leg by order
  const orbiting =
    now.leg === 'downwind' &&
    Math.abs(wrapPi(s.trackRadT - lesson.lines.downwind.trackRadT)) > OFF_THE_LEG_RAD;
  if (orbiting) return;
  const planned = PLANNED[now.leg];
  if (ON_THE_CENTRELINE.has(now.leg)) takeIn(now.trackErrorM, where.acrossM);
  else if (planned !== undefined) {
    const line = lesson.lines[planned];
    const eastM = s.eastM - line.eastM;
    const northM = s.northM - line.northM;
    takeIn(now.trackErrorM, eastM * line.cosTrack - northM * line.sinTrack);
  }
  if (planned === undefined || s.timeS - now.fromS < SETTLE_S) return;
  const climbing = s.indicatedVerticalSpeedMps > CLIMBING_MPS;
  const below = s.heightM < lesson.plan.heightM - STILL_BELOW_M;
  if (SPEED_IS_SETTLED[planned]?.(climbing, below, s.wheelClearanceM) ?? true)
    takeIn(now.settledIasMps, m.smoothIasMps);
  takeIn(now.trackOffRad, wrapPi(s.trackRadT - lesson.lines[planned].trackRadT));
  // Level until abeam the threshold: a descent may begin there.
  const level = where.alongM > 0 && !(climbing && below);
  if (planned === 'downwind' && level) takeIn(now.levelHeightM, s.heightM);
  if (POWER_IS_SETTLED[planned]?.(level, s)) takeIn(now.settledRevps, s.engineRevps);
};

/** A stretch that is over changes no more; frozen, every keyframe can share it. */
export const closeStretch = (stretch: Stretch): Stretch => closeFact(stretch);
