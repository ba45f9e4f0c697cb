import type { RunsBrief } from '../distances/types.ts';
import type { RunwayWind } from '../runway-choice.ts';
import type { CircuitLeg, CircuitPlan, Conflict } from '../types.ts';
import type { WindAboveBrief } from '../wind-above.ts';
import type { LegWords } from './checks-and-calls.ts';

/** One landing direction as the day's wind finds it. */
export interface EndBrief {
  readonly designator: string;
  readonly wind: RunwayWind;
  /** One sentence for each limit of the aeroplane that is exceeded, gusts counted. */
  readonly overLimits: readonly string[];
}

/** Which way, and why. */
export interface RunwayBrief {
  readonly inUse: EndBrief;
  readonly other: EndBrief;
  readonly crosswindLimitMps: number;
  readonly tailwindLimitMps: number;
  readonly sentence: string;
}

/**
 * A stretch of a leg flown in one way; on final, once with the flap of the approach and once with that for landing.
 * Gliding, seconds, heights and rpm say nothing.
 */
export interface StretchBrief {
  readonly way: 'climbing' | 'level' | 'descending' | 'landing flap' | 'gliding';
  readonly seconds: number;
  readonly groundspeedMps: number;
  readonly fromHeightM: number;
  readonly toHeightM: number;
  /** What the altimeter on QNH reads at its beginning and at its end. */
  readonly fromAltitudeM: number;
  readonly toAltitudeM: number;
  /** Over the ground, + up. */
  readonly verticalSpeedMps: number;
  readonly iasMps: number;
  readonly flapDeg: number;
  readonly revps: number;
  /** Null where the rpm tells the power. */
  readonly manifoldPa: number | null;
  readonly fullPower: boolean;
}

export interface LegBrief {
  readonly leg: CircuitLeg;
  readonly trackRadM: number;
  /** To hold, wings level. */
  readonly headingRadM: number;
  /** Track minus heading, + the wind moves the aeroplane to the right. */
  readonly driftRad: number;
  readonly iasMps: number;
  readonly groundspeedMps: number;
  /** + from behind. */
  readonly tailwindMps: number;
  /** Of the wind across the track and the true airspeed: the sum for the head; null without drift. */
  readonly oneInSixty: string | null;
  /** Of the straight part. */
  readonly seconds: number;
  /** Of the turn that leads onto it; 0 for upwind. */
  readonly turnSeconds: number;
  readonly turnBankRad: number;
  readonly stretches: readonly StretchBrief[];
  readonly words: LegWords;
}

export interface ApproachBrief {
  readonly iasMps: number;
  readonly gustAdditionMps: number;
  readonly sentence: string;
  readonly landingFlap: string;
  /** Stage to land with, in this wind. */
  readonly landingStage: number;
  readonly source: string;
}

/** Where the base turn begins in this wind, and what moves it. */
export interface BaseTurnBrief {
  /** Between the wing line and the threshold. */
  readonly angleRad: number;
  readonly stillAirAngleRad: number;
  /** Than in still air; negative is later. */
  readonly earlierS: number;
  /** From the centreline, where the turn to final begins. */
  readonly finalTurnLeadM: number;
  readonly stillAirLeadM: number;
  readonly sentences: readonly string[];
}

export interface LightsBrief {
  readonly title: string;
  /** Where they are and from where they can be seen. */
  readonly where: string;
  /** What the planned final shows, far to near. */
  readonly shown: readonly {
    readonly letters: string;
    readonly words: string;
    readonly fromHeightM: number;
    readonly toHeightM: number;
  }[];
}

export interface GateBrief {
  readonly heightM: number;
  readonly altitudeM: number;
  /** From the landing threshold, back along the planned final; null where the final begins below it. */
  readonly beforeThresholdM: number | null;
  readonly sentence: string;
}

/** Everything that is said before a circuit lesson, from one plan. */
export interface Brief {
  readonly plan: CircuitPlan;
  readonly runway: RunwayBrief;
  readonly windAbove: WindAboveBrief;
  readonly legs: readonly LegBrief[];
  readonly approach: ApproachBrief;
  /** What is said instead of the approach where it is a glide; else null. */
  readonly glide: string | null;
  readonly baseTurn: BaseTurnBrief;
  readonly lights: LightsBrief | null;
  readonly conflict: Conflict | null;
  readonly gates: readonly GateBrief[];
  readonly runs: RunsBrief;
  readonly air: {
    readonly elevationM: number;
    readonly densityAltitudeM: number;
    readonly circuitAltitudeM: number;
    /** What the altimeter makes of the day's warmth, where it is worth a sentence; else null. */
    readonly sentence: string | null;
  };
  readonly engineFailure: readonly string[];
  readonly goAround: readonly string[];
  readonly notes: readonly string[];
}
