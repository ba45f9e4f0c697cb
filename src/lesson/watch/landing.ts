import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt, mpsFromKt } from '../../units/conversions.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import type { LandingFact, LessonMemory } from '../memory.ts';
import { LOOK_S } from './look-interval.ts';

/** From here down it is a landing, and above the other it is over. */
const BEGINS_M = mFromFt(50); // definition: screen height
const OVER_M = mFromFt(150); // our choice: as the flare is forgotten
/** So little sink, and the aeroplane is level. */
const LEVEL_MPS = 0.3; // our choice: some 60 ft/min
const SHALLOW_SHARE = 0.5; // our choice: half of the approach's sink is broken
const STRAIGHTEN_M = mFromFt(10); // common practice: straightened in the last feet
const POWER_OFF_M = mFromFt(15); // common practice: idle by the end of the round-out
const POWER = 0.12; // our choice: more than a lever on its way to idle
const WALKING_MPS = mpsFromKt(15); // our choice: slower is no landing roll

const newLanding = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): LandingFact => ({
  circuit: m.legs.circuit,
  fromS: s.timeS,
  overMps: m.smoothIasMps - lesson.plan.approachIasMps,
  sinkMps: Math.max(0.5, m.flare.smoothSinkMps),
  pitchRad: m.flare.smoothPitchRad,
  headwindMps: s.tasMps - s.groundspeedMps,
  pulledRadps: 0,
  levelM: null,
  levelIasMps: 0,
  lowestM: s.wheelClearanceM,
  balloonM: 0,
  balloonGustMps: 0,
  highestPitchRad: m.flare.smoothPitchRad,
  pushedRad: 0,
  pushedFromM: 0,
  fromM: null,
  poweredS: 0,
  crabRad: null,
  touched: false,
  hopM: 0,
  lockedS: 0,
  over: false,
});

/** The last of an approach as it was flown, from the screen height to the end of the roll: what causes are found in. */
export const watchLanding = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  // A memory that was kept before landings were watched has none
  m.landings ??= [];
  const last = m.landings[m.landings.length - 1];
  const { leg } = m.legs;
  const clearM = s.wheelClearanceM;
  if (last === undefined || last.over) {
    const coming = leg === 'final' || leg === 'hold-off';
    if (coming && !s.onGround && clearM < BEGINS_M) m.landings.push(newLanding(m, lesson, s));
    return;
  }
  if (clearM > OVER_M || leg === 'upwind' || leg === 'take-off-roll' || leg === 'stopped') {
    last.over = true;
    closeFact(last);
    return;
  }
  if (m.wheels.landing || s.onGround) takeInRoll(last, m, s);
  else takeInHoldOff(last, m, lesson, s);
};

const takeInHoldOff = (l: LandingFact, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const clearM = s.wheelClearanceM;
  const { smoothSinkMps, smoothPitchRad } = m.flare;
  l.pulledRadps = Math.max(l.pulledRadps, s.pitchRateRadps);
  if (clearM < POWER_OFF_M && s.throttle > POWER && !s.engineDead) l.poweredS += LOOK_S;
  if (l.crabRad === null && clearM < STRAIGHTEN_M)
    l.crabRad = wrapPi(s.headingRadT - lesson.runway.headingRadT);
  if (smoothSinkMps < LEVEL_MPS) {
    if (l.levelM === null) {
      l.levelM = clearM;
      l.levelIasMps = m.smoothIasMps;
    }
    l.fromM = clearM;
  }
  if (smoothSinkMps < SHALLOW_SHARE * l.sinkMps || l.levelM !== null) {
    const climbedM = clearM - l.lowestM;
    if (climbedM > l.balloonM) {
      l.balloonM = climbedM;
      l.balloonGustMps = Math.max(l.balloonGustMps, s.tasMps - s.groundspeedMps - l.headwindMps, s.windUpMps);
    }
    // A stalled nose falls by itself
    const downRad = l.highestPitchRad - smoothPitchRad;
    if (!s.stalled && !s.warner && downRad > l.pushedRad && clearM > mFromFt(2)) {
      if (l.pushedRad === 0) l.pushedFromM = clearM;
      l.pushedRad = downRad;
    }
  }
  l.lowestM = Math.min(l.lowestM, clearM);
  l.highestPitchRad = Math.max(l.highestPitchRad, smoothPitchRad);
};

const takeInRoll = (l: LandingFact, m: LessonMemory, s: Readonly<Snapshot>): void => {
  l.touched = true;
  if (!s.onGround) l.hopM = Math.max(l.hopM, m.wheels.highestHopM);
  if (s.wheelsLocked && s.onGround && s.groundspeedMps > WALKING_MPS) l.lockedS += LOOK_S;
};
