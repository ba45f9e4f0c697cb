import type { RegimeName } from './briefing/habits.ts';
import type { Hands } from './hands.ts';
import type { PhaseName } from './phase-name.ts';
import type { PilotView } from './view.ts';

/** All that the model pilot carries from step to step; plain data, finite numbers, safe for JSON. */
export interface PilotMemory {
  phase: PhaseName;
  phaseFromS: number;
  /** Looks taken since the beginning. */
  looks: number;
  /** The latest views; the one to act on is the oldest: that is the reaction delay. */
  readonly views: PilotView[];
  readonly hands: Hands;
  /** How the aeroplane is being flown just now: the habit that says which power and attitude to expect. */
  regime: RegimeName;
  /** What the needle and what the attitude say, over some seconds; how long they have disagreed. */
  needleIasMps: number;
  attitudeIasMps: number;
  needleWrongS: number;
  // The needle from look to look: where it was, how it moved, how its movement changes
  needleSeenMps: number;
  needleMovedMps: number;
  needleTremblesMps: number;
  /** The needle is not looked at any more. */
  needleDead: boolean;
  /** Airspeed as an eye that averages the needle reads it, and how it changes. */
  iasMps: number;
  iasTrendMps2: number;
  verticalSpeedMps: number;
  /** Judged over some seconds, as the approach is. */
  settledIasMps: number;
  settledVerticalSpeedMps: number;
  smoothBankRad: number;
  /** How much the needle jumps about its mean. */
  roughnessMps: number;
  // What each hold has found out so far
  pitchWantedRad: number;
  /** Where the nose and the wings should be by now, given that the aeroplane takes its time. */
  pitchExpectedRad: number;
  bankExpectedRad: number;
  feedRad: number;
  pitchHoldRad: number;
  pathWantedMps: number;
  tradeHoldRad: number;
  flareHoldRad: number;
  sideHoldRad: number;
  powerHold: number;
  bankWantedRad: number;
  bankHold: number;
  rudderHold: number;
  /** Foot that the slip has answered to. */
  slipFoot: number;
  /** Still in the turn onto the leg that the phase names. */
  turning: boolean;
  /** The climb is over: this circuit's height is held. */
  levelled: boolean;
  landings: number;
  goArounds: number;
  /** Of these, from a float too long. */
  floats: number;
  /** Where and how the decision to go around fell, for whoever asks; empty when it did not. */
  goAroundWhy: string;
  /** Height the last gate was looked at from; gates below it are still to come. */
  lastHeightM: number;
  /** Of the completed final turn before the aim point. */
  finalLengthM: number;
  touchedS: number;
  touchdowns: number;
  driftS: number;
  airborneS: number;
  flapFromS: number;
  brakeS: number;
  /** Instructions that have been acted on. */
  readonly heard: string[];
  // An orbit: how far round, and where the track pointed at the last look
  orbitRad: number;
  orbitTrackRad: number;
  /** Which part of a glide approach is being flown. */
  glideLeg: 'base' | 'turn' | 'final';
  /** The engine has stopped: what follows is a landing, wherever. */
  engineOut: boolean;
  /** Direction of that landing. */
  landRad: number;
}

const TURNED_ONTO: ReadonlySet<PhaseName> = new Set(['crosswind', 'downwind', 'base', 'final']);

export const beginPhase = (m: PilotMemory, v: Readonly<PilotView>, phase: PhaseName): void => {
  m.phase = phase;
  m.phaseFromS = v.timeS;
  m.turning = TURNED_ONTO.has(phase);
};
