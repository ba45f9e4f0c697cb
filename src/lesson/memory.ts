import type { Instruction } from '../simulation/task.ts';
import type { Measure } from './measure.ts';
import type { LegName, TurnOnto } from './names.ts';
import type { ProcedureMemory } from './procedures/memory.ts';
import type { LegMemory } from './watch/legs.ts';

/** A stretch of the flight with one leg name; SI, signs as everywhere. */
export interface Stretch {
  circuit: number;
  leg: LegName;
  fromS: number;
  toS: number;
  heightM: Measure;
  iasMps: Measure;
  bankRad: Measure;
  trackErrorM: Measure;
  /** Smoothed speed after the leg has settled; what is assessed. */
  settledIasMps: Measure;
  /** Height while the plan is level there, after the leg has settled. */
  levelHeightM: Measure;
  /** Track from the planned track, after the leg has settled. */
  trackOffRad: Measure;
  fromHeightM: number;
  endHeightM: number;
  /** Stalling speed with the flap at the end. */
  endStallIasMps: number;
  endFlapStage: number;
  /** Of the ball without sign, in g, smoothed. */
  ball: Measure;
  /** Held pressure once flight has been steady for ten seconds. */
  heldDegKpa: Measure;
  /** Lamps showing white beyond half of them, where the plan has half red and half white. */
  lamps: Measure;
  throttle: Measure;
  /** After the leg has settled; on downwind while it is level. */
  settledRevps: Measure;
  /** Time spent slipping by more than a few degrees. */
  slippedS: number;
  /** Furthest above the limit speed of the flap that was out; 0: never. */
  flapOverMps: number;
}

export interface TurnFact {
  circuit: number;
  onto: TurnOnto;
  fromS: number;
  /** Null while it goes on. */
  toS: number | null;
  /** Without sign. */
  bankRad: Measure;
  /** Of the ball without sign, in g, smoothed. */
  ball: Measure;
  fromHeightM: number;
  /** Where it began, along and out from the threshold. */
  fromAlongM: number;
  fromOutM: number;
  overshootM: number;
}

export interface GateFact {
  circuit: number;
  heightFt: number;
  atS: number;
  slopeRad: number;
  lights: string | null;
  iasMps: number;
  sinkMps: number;
  centrelineM: number;
  bankRad: number;
  why: string[];
  /** This gate decides whether to go on (otherwise it only informs). */
  decides: boolean;
}

export interface DueFact {
  circuit: number;
  dueS: number;
  heightM: number;
  why: string;
  /** The gate that asked, ft; null where none did. */
  gateFt: number | null;
  /** Asked in the hold-off, which is judged by its rows and by the runway that is left. */
  ofHoldOff: boolean;
  /** A go-around has followed. */
  answered: boolean;
  /** Flight went on all the same. */
  ignored: boolean;
}

export interface GoAroundFact {
  circuit: number;
  atS: number;
  heightM: number;
  dueS: number | null;
  why: string;
}

export interface TouchdownFact {
  circuit: number;
  atS: number;
  alongM: number;
  acrossM: number;
  sinkMps: number;
  iasMps: number;
  crabRad: number;
  driftMps: number;
  pitchRad: number;
  bounces: number;
  onRunway: boolean;
  /** The nose wheel met the ground with the main wheels or before. */
  noseFirst: boolean;
  /** Wheels' height where the round-out began, and from there to the touch; null when it was not seen. */
  roundOutM: number | null;
  floatM: number | null;
  /** From the touch to the nose wheel coming down; so long so far while it is still up. */
  noseUpS: number;
  /** The longest time the brakes were on without a break, above walking pace. */
  longestBrakeS: number;
  /** With full power on already: the touch that a go-around may make. */
  underPower: boolean;
}

/** The last of an approach: how it came down, and where that was stopped. */
export interface FlareMemory {
  /** Sink and attitude of the approach before it. */
  approachSink: Measure;
  approachPitch: Measure;
  smoothSinkMps: number;
  smoothPitchRad: number;
  /** Where the approach was last as it had been. */
  begunM: number;
  begunAlongM: number;
  roundOutM: number | null;
  roundOutAtS: number;
  roundOutAlongM: number;
}

/** What the pilot was told, and what became of it. */
export interface SaidFact {
  readonly what: Instruction['what'];
  circuit: number;
  saidS: number;
  /** Power off, power on or the turn made; null so far. */
  obeyedS: number | null;
  /** When the second half of it was said: base, after an extended downwind; null so far or without one. */
  thenS: number | null;
  /** Turned so far on the way round, towards the side asked for. */
  turnedRad: number;
  lastTrackRad: number;
}

/** From the moment the engine stopped. */
export interface EngineFact {
  failedS: number;
  headingRadT: number;
  /** Furthest off that heading, without sign. */
  turnedRad: number;
  /** Smoothed, once the nose is down. */
  iasMps: Measure;
}

/** The wheels, step by step: what the linear crossing of a touchdown needs. */
export interface WheelMemory {
  onGround: boolean;
  clearM: number;
  alongM: number;
  acrossM: number;
  /** Since the last contact. */
  highestHopM: number;
  /** The landing that is going on is the last of the list. */
  landing: boolean;
}

/** Of a condition that must last before it counts. */
export interface Spell {
  fromS: number | null;
  told: boolean;
}

/** All that the lesson carries from step to step: plain data. */
export interface LessonMemory {
  legs: LegMemory;
  now: Stretch;
  stretches: Stretch[];
  turns: TurnFact[];
  gates: GateFact[];
  dues: DueFact[];
  goArounds: GoAroundFact[];
  touchdowns: TouchdownFact[];
  wheels: WheelMemory;
  /** Speed and bank as an eye on the instrument reads them: lagged. */
  smoothIasMps: number;
  smoothBankRad: number;
  /** Began in the air. */
  startedInAir: boolean;
  smoothBall: number;
  smoothHeldDegKpa: number;
  /** Since when flight has been steady; null while it is not. */
  steadyFromS: number | null;
  flare: FlareMemory;
  brakeFromS: number | null;
  /** The nose wheel has come down since the last touch. */
  noseDown: boolean;
  said: SaidFact[];
  engine: EngineFact | null;
  /** Wheels' height at the last look. */
  lastHeightM: number;
  lastS: number;
  /** The highest gate that this approach has still to pass, as an index into GATES_FT. */
  gatesPassed: number;
  /** Distance from the threshold at which final began. */
  finalFromM: number;
  /** Letters of the slope lights now; empty outside final or without lights. */
  lights: string;
  spells: Record<string, Spell>;
  safety: { atS: number; what: string }[];
  ranOff: boolean;
  landedOut: boolean;
  stop: { alongM: number; acrossM: number } | null;
  ended: 'crashed' | 'loss-of-control' | null;
  endedWhy: string;
  endS: number;
  /** Checks, calls, lookout, traffic; null where the flight has none of them. */
  procedures: ProcedureMemory | null;
}
