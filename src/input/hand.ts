import type { Controls } from '../simulation/controls.ts';
import { type Scenario, STEP_S } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { mpsFromKt, radFromDeg } from '../units/conversions.ts';
import type { Intent } from './intent.ts';

type Aeroplane = Scenario['aeroplane'];

/**
 * The hand on the stick, two ways.
 *
 * `hold`: keys move the attitude that the hand wants; the hand finds the elevator that keeps it, within its
 * strength. Turning the trim wheel moves the load from the hand to the wheel without moving the nose.
 * `stick`: keys move the stick at a rate, and it springs back to where the wheel holds it.
 * In both, roll keys roll and the bank stays. Everything carried from step to step is in `HandMemory`.
 */
export type HandStyle = 'hold' | 'stick';

export interface HandMemory {
  style: HandStyle;
  /** The attitude the hand wants (hold). */
  wantedPitchRad: number;
  /** The bank the hand wants once the roll keys are let go (hold). */
  wantedBankRad: number;
  /** What the hand has learnt to hold: the slow part of its elevator. */
  learntElevator: number;
  /** Where the keys have put the stick (stick). */
  stickElevator: number;
  aileron: number;
  rudder: number;
  brake: number;
}

/** Movement of the levers under the keys, in travels a second. Chosen by trying. */
const RATE = {
  attitudeRadps: radFromDeg(3),
  stickOut: 1.6,
  stickBack: 3,
  aileronOut: 3.5,
  aileronBack: 8,
  rudderOut: 1.5,
  rudderBack: 4,
  power: 0.45,
  trim: 0.16,
  slowLever: 0.25,
  /** A lever dragged on the screen. */
  lever: 2,
  brakeOn: 2.5,
  brakeOff: 5,
} as const;

/** The hand's own law: elevator per radian of error, per rad/s, and learnt per radian and second, at 65 kt. */
const LAW = {
  perRad: 5,
  perRadps: 1.8,
  learnPerRadS: 8,
  referencePa: 685,
  furthestRad: radFromDeg(4),
} as const;
/** Slower than this on its wheels, nothing answers to the elevator (estimate). */
const TAXIING_MPS = mpsFromKt(20);
/** What makes a pull on the ground a rotation that is held. */
const ROTATE = { throttle: 0.6, share: 0.8, askedRad: radFromDeg(0.2) } as const;
const ATTITUDE = { lowRad: radFromDeg(-20), highRad: radFromDeg(25) } as const;
const BANK = { perRad: 1.6, perRadps: 0.35, most: 0.35, levelRad: radFromDeg(1.5), leadS: 0.25 } as const;

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));
const towards = (x: number, goal: number, by: number) =>
  x < goal ? Math.min(goal, x + by) : Math.max(goal, x - by);

export const beginHand = (
  style: HandStyle,
  snapshot: Readonly<Snapshot>,
  controls: Readonly<Controls>,
): HandMemory => ({
  style,
  wantedPitchRad: snapshot.pitchRad,
  wantedBankRad: snapshot.bankRad,
  learntElevator: controls.elevator,
  stickElevator: controls.elevator,
  aileron: controls.aileron,
  rudder: controls.rudder,
  brake: controls.brake,
});

/** The most elevator, in shares of travel, that one hand can hold at this dynamic pressure. */
const strength = (aeroplane: Aeroplane, dynamicPressurePa: number, travelDeg: number): number => {
  const loadKpa = dynamicPressurePa / 1000;
  return loadKpa * travelDeg <= aeroplane.pitch.handLimitDegKpa
    ? 1
    : aeroplane.pitch.handLimitDegKpa / (loadKpa * travelDeg);
};

/** Elevator that makes up for a movement of the wheel: the same surface angle, now carried by the other. */
const elevatorForTrim = (aeroplane: Aeroplane, trimMoved: number, elevator: number): number => {
  const { trimUpDeg, trimDownDeg, elevatorUpDeg, elevatorDownDeg } = aeroplane.pitch;
  const trimDeg = trimMoved * (trimMoved > 0 ? trimUpDeg : trimDownDeg);
  return -trimDeg / (elevator > 0 ? elevatorUpDeg : elevatorDownDeg);
};

const moveStick = (
  memory: HandMemory,
  snapshot: Readonly<Snapshot>,
  intent: Readonly<Intent>,
  aeroplane: Aeroplane,
): number => {
  const asked = intent.letGo ? 0 : intent.pitch;
  const outwards = Math.abs(asked) > Math.abs(memory.stickElevator) || asked * memory.stickElevator < 0;
  const rate = intent.analogue ? 8 : outwards ? RATE.stickOut : RATE.stickBack;
  const up = strength(aeroplane, snapshot.dynamicPressurePa, aeroplane.pitch.elevatorUpDeg);
  const down = strength(aeroplane, snapshot.dynamicPressurePa, aeroplane.pitch.elevatorDownDeg);
  memory.stickElevator = clamp(towards(memory.stickElevator, asked, rate * STEP_S), -down, up);
  return memory.stickElevator;
};

const holdAttitude = (
  memory: HandMemory,
  snapshot: Readonly<Snapshot>,
  intent: Readonly<Intent>,
  aeroplane: Aeroplane,
): number => {
  if (intent.letGo) {
    memory.wantedPitchRad = snapshot.pitchRad;
    memory.learntElevator = towards(memory.learntElevator, 0, RATE.stickBack * STEP_S);
    return memory.learntElevator;
  }
  // Standing or taxiing there is no attitude to hold: the keys move the stick, to its stops and back.
  if (snapshot.onGround && snapshot.groundspeedMps < TAXIING_MPS) {
    memory.wantedPitchRad = snapshot.pitchRad;
    memory.stickElevator = memory.learntElevator;
    memory.learntElevator = moveStick(memory, snapshot, intent, aeroplane);
    return memory.learntElevator;
  }
  // With the nosewheel on the ground nothing is held until the stick is asked for; on a take-off run that is
  // nearly fast enough each tap counts, and the hand goes on pulling.
  const rotating =
    snapshot.throttle > ROTATE.throttle &&
    snapshot.iasMps > ROTATE.share * mpsFromKt(aeroplane.speeds.rotateKt) &&
    memory.wantedPitchRad > snapshot.pitchRad + ROTATE.askedRad;
  if (snapshot.noseWheelOnGround && intent.pitch === 0 && !rotating) {
    memory.wantedPitchRad = snapshot.pitchRad;
    memory.learntElevator = towards(memory.learntElevator, 0, RATE.stickBack * STEP_S);
    return memory.learntElevator;
  }
  const wanted = memory.wantedPitchRad + intent.pitch * RATE.attitudeRadps * STEP_S;
  // A hand at the end of its strength, or on a nose that cannot rise yet, does not wind itself up.
  memory.wantedPitchRad = clamp(
    clamp(wanted, snapshot.pitchRad - LAW.furthestRad, snapshot.pitchRad + LAW.furthestRad),
    ATTITUDE.lowRad,
    ATTITUDE.highRad,
  );
  const gain = clamp(LAW.referencePa / Math.max(1, snapshot.dynamicPressurePa), 0.35, 2);
  const errorRad = memory.wantedPitchRad - snapshot.pitchRad;
  const asked = intent.pitch * RATE.attitudeRadps;
  const quick = gain * (LAW.perRad * errorRad + LAW.perRadps * (asked - snapshot.pitchRateRadps));
  const up = strength(aeroplane, snapshot.dynamicPressurePa, aeroplane.pitch.elevatorUpDeg);
  const down = strength(aeroplane, snapshot.dynamicPressurePa, aeroplane.pitch.elevatorDownDeg);
  const learnt = memory.learntElevator + gain * LAW.learnPerRadS * errorRad * STEP_S;
  const elevator = learnt + quick;
  const held = clamp(elevator, -down, up);
  // It learns only while it can still move the way it wants to.
  if (held === elevator || (held - elevator) * errorRad > 0) memory.learntElevator = clamp(learnt, -down, up);
  return held;
};

const roll = (memory: HandMemory, snapshot: Readonly<Snapshot>, intent: Readonly<Intent>): number => {
  if (intent.letGo) {
    memory.wantedBankRad = snapshot.bankRad;
    memory.aileron = towards(memory.aileron, 0, RATE.aileronBack * STEP_S);
    return memory.aileron;
  }
  const rolling = intent.roll !== 0 || Math.abs(memory.aileron) > 1e-9;
  const rate = intent.analogue ? 10 : intent.roll !== 0 ? RATE.aileronOut : RATE.aileronBack;
  memory.aileron = towards(memory.aileron, intent.roll, rate * STEP_S);
  if (rolling || snapshot.onGround) {
    const settling = snapshot.bankRad + snapshot.rollRateRadps * BANK.leadS;
    memory.wantedBankRad = Math.abs(settling) < BANK.levelRad ? 0 : settling;
    return memory.aileron;
  }
  if (memory.style === 'stick') return 0;
  const errorRad = memory.wantedBankRad - snapshot.bankRad;
  return clamp(BANK.perRad * errorRad - BANK.perRadps * snapshot.rollRateRadps, -BANK.most, BANK.most);
};

/**
 * One step of the hands: reads the intent and the last snapshot, writes the controls in place.
 * On the ground the roll asked for also steers, so that four keys are enough to keep straight.
 */
export const moveHand = (
  memory: HandMemory,
  snapshot: Readonly<Snapshot>,
  intent: Readonly<Intent>,
  aeroplane: Aeroplane,
  controls: Controls,
): void => {
  const trimmed =
    intent.trimTo !== null && intent.trim === 0
      ? towards(controls.trim, intent.trimTo, RATE.lever * STEP_S)
      : clamp(controls.trim + intent.trim * RATE.trim * STEP_S, -1, 1);
  if (memory.style === 'hold' && !intent.letGo) {
    memory.learntElevator += elevatorForTrim(aeroplane, trimmed - controls.trim, memory.learntElevator);
  }
  controls.trim = trimmed;
  controls.elevator =
    memory.style === 'hold'
      ? holdAttitude(memory, snapshot, intent, aeroplane)
      : moveStick(memory, snapshot, intent, aeroplane);
  controls.aileron = roll(memory, snapshot, intent);

  const steering = snapshot.onGround && intent.rudder === 0 ? 0.6 * intent.roll : intent.rudder;
  const foot = intent.letGo ? 0 : clamp(steering, -1, 1);
  memory.rudder = towards(memory.rudder, foot, (foot === 0 ? RATE.rudderBack : RATE.rudderOut) * STEP_S);
  controls.rudder = memory.rudder;

  memory.brake = towards(
    memory.brake,
    intent.brake,
    (intent.brake > memory.brake ? RATE.brakeOn : RATE.brakeOff) * STEP_S,
  );
  controls.brake = memory.brake;
  controls.throttle =
    intent.throttleTo !== null && intent.power === 0
      ? towards(controls.throttle, intent.throttleTo, RATE.lever * STEP_S)
      : clamp(controls.throttle + clamp(intent.power, -1, 1) * RATE.power * STEP_S, 0, 1);
  const topStage = aeroplane.flap.stages.length - 1;
  controls.flapStage = clamp((intent.flapTo ?? controls.flapStage) + intent.flapStages, 0, topStage);
  if (intent.carbHeatPresses % 2 === 1) controls.carbHeat = 1 - controls.carbHeat;
  if (intent.pumpPresses % 2 === 1) controls.pump = 1 - controls.pump;
  const { equipment, undercarriage } = aeroplane;
  if (undercarriage.retractable && intent.gearPresses % 2 === 1) controls.gear = 1 - controls.gear;
  if (equipment.propellerLever)
    controls.propeller = clamp(controls.propeller + intent.propeller * RATE.slowLever * STEP_S, 0, 1);
  if (equipment.mixture)
    controls.mixture = clamp(controls.mixture + intent.mixture * RATE.slowLever * STEP_S, 0, 1);
};
