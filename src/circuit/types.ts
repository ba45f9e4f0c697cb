import type { Runway } from '../aerodrome/runway.ts';
import type { Steady } from '../simulation/performance/steady.ts';
import type { RunsBrief } from './distances/types.ts';

/** The straight parts of a circuit, in the order they are flown. */
export const CIRCUIT_LEGS = ['upwind', 'crosswind', 'downwind', 'base', 'final'] as const;
export type CircuitLeg = (typeof CIRCUIT_LEGS)[number];

/** A point of the planned path: earth axes from the landing threshold in use, height of the wheels above it. */
export interface PathPoint {
  readonly eastM: number;
  readonly northM: number;
  readonly heightM: number;
  /** Along the path from the start of the take-off roll. */
  readonly distanceM: number;
  readonly leg: CircuitLeg | 'take-off-roll' | 'landing-roll';
  readonly turning: boolean;
}

export interface LegPlan {
  readonly leg: CircuitLeg;
  /** Along the ground. */
  readonly trackRadT: number;
  readonly headingRadT: number;
  /** Track minus heading, + the wind moves the aeroplane to the right. */
  readonly driftRad: number;
  readonly iasMps: number;
  readonly tasMps: number;
  readonly groundspeedMps: number;
  /** + pushes along the track, and + from the left (pushes right), at the leg's mean height. */
  readonly tailwindMps: number;
  readonly crosswindMps: number;
  /** Straight part only: roll-out of one turn to the start of the next. */
  readonly from: PathPoint;
  readonly to: PathPoint;
  readonly lengthM: number;
  readonly seconds: number;
  /** Over the ground, + up. */
  readonly verticalSpeedMps: number;
  readonly flapStage: number;
  readonly flapDeg: number;
  /** At the leg's start: 1 down, 0 up. */
  readonly gear: 0 | 1;
  /** Propeller lever; 1 where there is none. */
  readonly propeller: number;
  /** The steady state that flies it: power, pitch, trim. */
  readonly steady: Steady;
  /** For a start in the air: on the leg at this height (upwind 300 ft, else at roll-out), in the wind there. */
  readonly start: {
    readonly heightM: number;
    readonly headingRadT: number;
    readonly verticalSpeedMps: number;
  };
  /** What changes on the way: a climb levels off, a descent begins; null where nothing does. */
  readonly change: LegChange | null;
}

/** The rest of a leg from `at` on. */
export interface LegChange {
  readonly at: PathPoint;
  readonly verticalSpeedMps: number;
  readonly steady: Steady;
}

export interface TurnPlan {
  readonly onto: CircuitLeg;
  readonly bankRad: number;
  /** + right. */
  readonly direction: 1 | -1;
  readonly from: PathPoint;
  readonly to: PathPoint;
  readonly seconds: number;
  readonly points: readonly PathPoint[];
}

/** What the chosen circuit, its heights and the slope lights cannot have together, with the ways out. */
export interface Conflict {
  readonly sentence: string;
  readonly waysOut: readonly {
    readonly id: 'wider' | 'steeper' | 'lower' | 'longer';
    readonly sentence: string;
    /** What to plan with for it, the options already chosen included; null where this way does not lead out. */
    readonly options: PlanOptions | null;
  }[];
}

/** What may be chosen otherwise than the aerodrome's custom says. */
export interface PlanOptions {
  readonly spacingM?: number;
  readonly approachRad?: number;
  readonly descentFrom?: 'abeam' | 'base-turn';
  /** As the altimeter counts it. */
  readonly circuitHeightM?: number;
  /** Aim point to the completed final turn: a longer final than the base-turn rule gives. */
  readonly finalFromAimM?: number;
  readonly levelBankRad?: number;
  readonly finalBankRad?: number;
}

export interface CircuitPlan {
  readonly runway: Runway;
  /** -1 left-hand, +1 right-hand. */
  readonly side: 1 | -1;
  readonly spacingM: number;
  readonly heightM: number;
  /** Of the final as planned: straight from the completed turn, for the eye to the aim point. */
  readonly approachRad: number;
  /** What the aerodrome or the options ask for; less than `approachRad` where the circuit cannot come down so. */
  readonly askedApproachRad: number;
  readonly descentFrom: 'abeam' | 'base-turn';
  readonly legs: Readonly<Record<CircuitLeg, LegPlan>>;
  /** Turns onto crosswind, downwind, base and final. */
  readonly turns: Readonly<Record<'crosswind' | 'downwind' | 'base' | 'final', TurnPlan>>;
  /** Dense, from the take-off start to the stop; rising distance. */
  readonly path: readonly PathPoint[];
  /** Angle behind the wing to the threshold at the start of the base turn, in this wind. */
  readonly baseTurnAngleRad: number;
  readonly rollOutOnFinalHeightM: number;
  /** Target approach speed, gust factor included (half the gust, handbook figure). */
  readonly approachIasMps: number;
  readonly gustAdditionMps: number;
  /** Lights letters the planned final shows, first and last height of each, from far to near; null without lights. */
  readonly lightsOnFinal:
    | readonly { readonly letters: string; readonly fromHeightM: number; readonly toHeightM: number }[]
    | null;
  readonly conflict: Conflict | null;
  /** Anything else that had to give, one sentence each: a wider circuit, a steeper bank. */
  readonly notes: readonly string[];
  /** The nose comes up here: a little later in a crosswind or gusts. */
  readonly rotateIasMps: number;
  /** Ground runs expected in this wind, without margin. */
  readonly takeOffRunM: number;
  readonly landingRunM: number;
  /** Over an obstacle of 50 ft, as handbooks give them, by the model and by factors, with their margins. */
  readonly runs: RunsBrief;
}
