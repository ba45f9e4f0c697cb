import type { WindAt } from './frame.ts';
import type { LaidLeg } from './laid-leg.ts';
import type { FlownTurn } from './turn.ts';

/** What a circuit is laid out from; SI, circuit axes. */
export interface LayoutRequest {
  readonly spacingM: number;
  readonly circuitHeightM: number;
  /** Where the wheels leave the ground, and the end of the surface. */
  readonly liftOffM: number;
  readonly departureEndM: number;
  readonly groundAtLiftOffM: number;
  /** No crosswind turn below this, nor before the departure end. */
  readonly crosswindTurnM: number;
  readonly descentFrom: 'abeam' | 'base-turn';
  /** Angle behind the wing at which the base turn would begin in still air. */
  readonly nilWindBaseTurnTangent: number;
  /** Final turn completed at this x whatever the rule says; null: where the still-air circuit completes it. */
  readonly rollOutX: number | null;
  /** Where the wheels would be if the eye flew straight into the aim point: eye height below it. */
  readonly aim: { readonly xM: number; readonly heightM: number };
  /** Of the approach asked for. */
  readonly approachTangent: number;
  /** The aeroplane is not asked to sink faster than this before final. */
  readonly steepestDescentMps: number;
  readonly windAt: WindAt;
  readonly tas: {
    readonly climbMps: number;
    readonly downwindMps: number;
    readonly baseMps: number;
    readonly finalMps: number;
  };
  /** Rates of climb at full power. */
  readonly climb: { readonly upwindMps: number; readonly turnMps: number; readonly crosswindMps: number };
  readonly bank: { readonly climbingRad: number; readonly levelRad: number; readonly finalRad: number };
  readonly rollRateRadps: number;
}

export interface Layout {
  /** Possibly more than asked: no tighter circuit can be flown with these banks in this wind. */
  readonly spacingM: number;
  readonly upwind: LaidLeg;
  readonly crosswindTurn: FlownTurn;
  readonly crosswind: LaidLeg;
  readonly downwindTurn: FlownTurn;
  readonly downwindTurnClimbs: boolean;
  readonly downwind: LaidLeg;
  readonly baseTurn: FlownTurn;
  readonly base: LaidLeg;
  readonly finalTurn: FlownTurn;
  readonly final: LaidLeg;
  /** Sink before final; below the steepest, or the final is steeper than asked. */
  readonly descentMps: number;
  /** Of the final as it comes out. */
  readonly approachTangent: number;
}
