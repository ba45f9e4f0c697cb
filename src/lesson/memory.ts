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

/** What can be wrong at a gate. */
export const GATE_FAULTS = [
  'turning',
  'high',
  'low',
  'centreline',
  'fast',
  'slow',
  'bank',
  'sink',
  'flap',
  'gear',
  'idle',
] as const;
export type GateFault = (typeof GATE_FAULTS)[number];

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
  /** The same by kind, in the same order. */
  faults: GateFault[];
  /** This gate decides whether to go on (otherwise it only informs). */
  decides: boolean;
}

/** What can ask for a going around; `asked`: whoever calls for it, traffic, no clearance. */
export const DUE_IDS = ['gate', 'first-third', 'high-bounce', 'drift', 'asked'] as const;
export type DueId = (typeof DUE_IDS)[number];

export interface DueFact {
  circuit: number;
  dueS: number;
  heightM: number;
  why: string;
  /** What asked. */
  id: DueId;
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
  /** What asked; null: nothing did. */
  due: DueId | null;
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

/** One landing from the screen height to the end of its roll, as it was flown: what its causes are found in. */
export interface LandingFact {
  circuit: number;
  fromS: number;
  /** Where it began: speed beyond the approach's, sink, attitude, wind on the nose. */
  overMps: number;
  sinkMps: number;
  pitchRad: number;
  headwindMps: number;
  /** Quickest that the nose came up. */
  pulledRadps: number;
  /** Where it was first level, and how fast; null: never before the touch. */
  levelM: number | null;
  levelIasMps: number;
  /** Lowest before the touch, how far it climbed from there, and what the air gave to that. */
  lowestM: number;
  balloonM: number;
  balloonGustMps: number;
  highestPitchRad: number;
  /** How far the nose was put down again before the touch, and from which height. */
  pushedRad: number;
  pushedFromM: number;
  /** Where it was last level before the touch; null: never. */
  fromM: number | null;
  /** With power on in the last feet. */
  poweredS: number;
  /** Nose from the runway in the last feet; null: never so low. */
  crabRad: number | null;
  touched: boolean;
  /** The highest hop after the touch. */
  hopM: number;
  /** Rolling on wheels that the brakes held still. */
  lockedS: number;
  /** Nothing more comes to it. */
  over: boolean;
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
  /** Told to stop, the brakes came before the throttle was closed. */
  brakedFirst: boolean;
}

/** From the moment the engine stopped. */
export interface EngineFact {
  failedS: number;
  headingRadT: number;
  /** Furthest off that heading, without sign. */
  turnedRad: number;
  /** Smoothed, once the nose is down. */
  iasMps: Measure;
  /** Slowest until then, while the nose is being put down. */
  firstIasMps: Measure;
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

/** Edges of a runway. */
export const EDGES = ['end', 'side'] as const;
export type RanOffAt = (typeof EDGES)[number];

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
  landings: LandingFact[];
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
  /** `id` is that of the table of safety stops, or of what was gone on from without going around. */
  safety: { id: string; atS: number; what: string }[];
  ranOff: boolean;
  /** Past which edge of the runway it first rolled; null: it has not. */
  ranOffAt: RanOffAt | null;
  landedOut: boolean;
  stop: { alongM: number; acrossM: number } | null;
  ended: 'crashed' | 'loss-of-control' | null;
  endedWhy: string;
  endS: number;
  /** Checks, calls, lookout, traffic; null where the flight has none of them. */
  procedures: ProcedureMemory | null;
}
