import { type Glance, type Misreading, noMisreading, turnTo } from './eyes.ts';
import type { Mistakes } from './faults.ts';
import { type Fingers, isDown, newFingers, press } from './fingers.ts';
import { deviate, type Luck, luckOf } from './luck.ts';
import type { Person } from './person.ts';
import type { Card, LegCard } from './plan-card.ts';

export const STAGES = [
  'roll',
  'upwind',
  'turn-crosswind',
  'crosswind',
  'turn-downwind',
  'downwind',
  'turn-base',
  'base',
  'turn-final',
  'final',
  'flare',
  'on-wheels',
  'going-around',
] as const;
export type Stage = (typeof STAGES)[number];

/** Everything a student carries from step to step: plain data. */
export interface Mind {
  luck: Luck;
  errors: Misreading;
  fingers: Fingers;
  stage: Stage;
  since: number;
  lastGlanceS: number;
  /** Seen, and not yet acted on. */
  pending: Glance | null;
  actAtS: number;
  wantPitchDeg: number;
  wantRpm: number;
  /** Until when the nose is left to settle. */
  pitchFreeS: number;
  rollFreeS: number;
  powerFreeS: number;
  correctedS: number;
  poweredS: number;
  trimmedS: number;
  heldSinceS: number;
  flapDueS: number;
  /** Degrees of crab that have been found to hold the leg. */
  crabDeg: number;
  crabbedS: number;
  lastIasKt: number;
  iasRateKtps: number;
  lateS: number;
  /** A place was reached at; the turn is begun `lateS` after it. */
  reachedS: number;
  descending: boolean;
  gatesSeen: number;
  stickSum: number;
  flareFromFt: number;
  goArounds: number;
  brakedS: number;
}

export const newMind = (seed: number, person: Person, stage: Stage): Mind => ({
  luck: luckOf(seed),
  errors: noMisreading(),
  fingers: newFingers(person.hands === 'gamepad'),
  stage,
  since: 0,
  lastGlanceS: -10,
  pending: null,
  actAtS: 0,
  wantPitchDeg: 0,
  wantRpm: 0,
  pitchFreeS: 0,
  rollFreeS: 0,
  powerFreeS: 0,
  correctedS: 0,
  poweredS: 0,
  trimmedS: 0,
  heldSinceS: 0,
  flapDueS: Number.POSITIVE_INFINITY,
  crabDeg: 0,
  crabbedS: 0,
  lastIasKt: 0,
  iasRateKtps: 0,
  lateS: 0,
  reachedS: Number.POSITIVE_INFINITY,
  descending: false,
  gatesSeen: 0,
  stickSum: 0,
  flareFromFt: 0,
  goArounds: 0,
  brakedS: 0,
});

/** The one who flies, with what the brief says. */
export interface Who {
  readonly person: Person;
  readonly card: Card;
  readonly mistakes: Mistakes;
  readonly side: 1 | -1;
}

export const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));

/** A place on the way is reached: true once the person has also noticed it. */
export const noticed = (m: Mind, who: Who, g: Glance, reached: boolean, mistakeS = 0): boolean => {
  if (!reached && m.reachedS === Number.POSITIVE_INFINITY) return false;
  if (m.reachedS === Number.POSITIVE_INFINITY) {
    m.reachedS = g.timeS;
    m.lateS = who.person.lateS + who.person.scatterS * deviate(m.luck) + Math.max(0, mistakeS);
  }
  return g.timeS >= m.reachedS + m.lateS;
};

export const turnPage = (m: Mind, g: Glance, stage: Stage): void => {
  m.stage = stage;
  m.since = g.timeS;
  m.reachedS = Number.POSITIVE_INFINITY;
  m.correctedS = g.timeS;
  m.poweredS = g.timeS;
};

/** Moves the nose by keys towards what is wanted, and lets it settle before the next look. */
export const nose = (m: Mind, { person }: Who, g: Glance): void => {
  const { stick } = m.fingers;
  if (stick !== null) return;
  if (g.timeS < m.pitchFreeS) return;
  const off = m.wantPitchDeg - g.pitchDeg;
  if (Math.abs(off) < 0.6) return;
  const forS = clamp((person.pitchGain * Math.abs(off)) / 3, 0, 1.5);
  press(m.fingers.pitch, g.timeS, Math.sign(off), forS);
  m.pitchFreeS = g.timeS + forS + 0.6;
};

/** A gamepad's stick is led all the time; the hand feels the nose move (some 0.1 s late, as in any small stick). */
export const stickToNose = (m: Mind, pitchDeg: number, pitchRateDegps: number, dtS: number): void => {
  const { stick } = m.fingers;
  if (stick === null) return;
  const off = m.wantPitchDeg - pitchDeg;
  m.stickSum = clamp(m.stickSum + 0.06 * off * dtS, -1, 1);
  stick.pitch = clamp(m.stickSum + 0.05 * off - 0.025 * pitchRateDegps, -1, 1);
};

const ROLL_DEGPS = 24;

/** Rolls towards a bank, + to the circuit's side. */
export const bankTo = (m: Mind, { person, side }: Who, g: Glance, wantDeg: number): void => {
  if (g.timeS < m.rollFreeS) return;
  const off = wantDeg - g.bankDeg;
  const { stick } = m.fingers;
  if (Math.abs(off) < 2) {
    if (stick !== null) stick.roll = 0;
    return;
  }
  const forS = clamp((person.rollGain * Math.abs(off)) / ROLL_DEGPS, 0.08, 1.4);
  const way = side * Math.sign(off);
  press(m.fingers.roll, g.timeS, way, forS);
  m.rollFreeS = g.timeS + forS + 0.35;
};

/** Turns towards a heading with at most this bank. */
export const headFor = (m: Mind, who: Who, g: Glance, headingDeg: number, mostDeg = 15): void => {
  const off = turnTo(g.headingDeg, headingDeg);
  bankTo(m, who, g, Math.abs(off) < 1.2 ? 0 : clamp(1.1 * off, -mostDeg, mostDeg));
};

/** Power towards a number on the gauge, by feel and in steps. */
export const power = (m: Mind, { person, card }: Who, g: Glance): void => {
  if (g.timeS < m.powerFreeS || isDown(m.fingers.power, g.timeS)) return;
  const reading = card.fixedPitch ? g.rpm : g.throttle * 2500;
  const off = m.wantRpm - reading;
  if (Math.abs(off) < person.powerStepRpm / 2 + 10) return;
  const share = Math.abs(off) / (card.fixedPitch ? 2000 : 2500);
  const forS = clamp(share / 0.45, 0.06, 2.6);
  press(m.fingers.power, g.timeS, Math.sign(off), forS);
  m.powerFreeS = g.timeS + forS + 1.6;
};

/** What the card's power reads on this student's gauge. */
export const reading = ({ card }: Who, leg: LegCard): number =>
  card.fixedPitch ? leg.rpm : leg.throttle * 2500;

/** Power to a figure of the card, rounded as people set it. */
export const setPower = (m: Mind, who: Who, rpm: number): void => {
  const { powerStepRpm } = who.person;
  m.wantRpm = Math.round(rpm / powerStepRpm) * powerStepRpm;
};

/** Takes a load out of the hand by the wheel, once it has been felt for a while. */
export const trim = (m: Mind, { person, mistakes }: Who, g: Glance): void => {
  if (mistakes.neverTrims === true) return;
  const load = Math.abs(g.held);
  if (load < person.trimsAbove || g.onGround) {
    m.heldSinceS = g.timeS;
    return;
  }
  if (g.timeS - m.heldSinceS < 2 || g.timeS < m.trimmedS + 1.5) return;
  press(m.fingers.trim, g.timeS, Math.sign(g.held), clamp(0.25 * load, 0.1, 1.2));
  m.trimmedS = g.timeS;
};

/** Pitch holds a speed: climbing, descending. */
export const speedByNose = (
  m: Mind,
  { person }: Who,
  g: Glance,
  speedKt: number,
  aboutDeg: number,
  calm = 1,
): void => {
  if (g.timeS < m.correctedS + person.correctS / calm) return;
  const off = g.iasKt + 2 * m.iasRateKtps - speedKt;
  if (Math.abs(off) < 2) return;
  m.correctedS = g.timeS;
  const by = clamp(calm * person.speedGainDegPerKt * off, -1.5, 1.5);
  m.wantPitchDeg = clamp(m.wantPitchDeg + by, aboutDeg - 4, aboutDeg + 4);
};

/** Pitch holds a height; power holds the speed. */
export const levelAt = (
  m: Mind,
  who: Who,
  g: Glance,
  heightFt: number,
  leg: LegCard,
  speedKt: number,
): void => {
  const { person } = who;
  if (g.timeS >= m.correctedS + 0.6 * person.correctS) {
    m.correctedS = g.timeS;
    const wantFpm = clamp(6 * (heightFt - g.heightFt), -500, 500);
    const by = clamp((wantFpm - g.verticalFpm) / 140, -2.5, 2.5);
    if (Math.abs(by) > 0.4) m.wantPitchDeg = clamp(g.pitchDeg + 0.8 * by, leg.pitchDeg - 7, leg.pitchDeg + 7);
  }
  if (g.timeS < m.poweredS + 7) return;
  const off = g.iasKt + 4 * m.iasRateKtps - speedKt;
  if (Math.abs(off) < 4) return;
  m.poweredS = g.timeS;
  m.wantRpm -= Math.sign(off) * Math.max(50, person.powerStepRpm);
};

/** The heading that keeps a track, found by watching the ground go by. */
export const holdTrack = (
  m: Mind,
  who: Who,
  g: Glance,
  leg: LegCard,
  trackDeg: number,
  mostDeg: number,
): void => {
  const wanted = leg.headingDeg + turnTo(leg.trackDeg, trackDeg) + m.crabDeg;
  if (g.timeS >= m.crabbedS + 3 && Math.abs(g.bankDeg) < 6) {
    m.crabbedS = g.timeS;
    // What the track is off, beyond what the heading is still off
    const off = turnTo(g.trackDeg, trackDeg) - turnTo(g.headingDeg, wanted);
    if (Math.abs(off) > 0.7) m.crabDeg = clamp(m.crabDeg + 0.6 * off, -40, 40);
  }
  headFor(m, who, g, wanted, mostDeg);
};

/** What the hands ask for of the flap: one stage at a time, inside its limit, wings about level. */
export const flapTowards = (m: Mind, { card }: Who, g: Glance, stage: number): void => {
  if (g.flapStage === stage || Math.abs(g.bankDeg) > 8) {
    m.flapDueS = Math.max(m.flapDueS, g.timeS);
    return;
  }
  if (g.timeS < m.flapDueS) return;
  const up = stage < g.flapStage;
  if (!up && g.iasKt > (card.flapLimitsKt[g.flapStage + 1] ?? 0) - 2) return;
  m.fingers.flap = up ? -1 : 1;
  m.flapDueS = g.timeS + 4;
  // The change of attitude that this flap brings is known and led
  m.wantPitchDeg += up ? 1.2 : -1.2;
};
