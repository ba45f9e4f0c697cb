import type { DueId, GateFault, RanOffAt } from '../memory.ts';
import type { LegName, TurnOnto } from '../names.ts';
import type { CauseId } from './cause-words.ts';

/** What a flight comes down to, in cockpit units: the body of the result file and of the result card. */
export interface Spread {
  readonly mean: number;
  readonly min: number;
  readonly max: number;
}

export interface LegReport {
  readonly circuit: number;
  readonly leg: LegName;
  readonly from_s: number;
  readonly to_s: number;
  readonly height_ft: Spread | null;
  readonly ias_kt: Spread | null;
  /** + right wing down. */
  readonly bank_deg: Spread | null;
  /** + right of the planned leg, or of the centreline; null in turns. */
  readonly track_error_m: Spread | null;
}

export interface TurnReport {
  readonly circuit: number;
  readonly onto: TurnOnto;
  readonly from_s: number;
  readonly to_s: number;
  /** Without sign. */
  readonly bank_deg: { readonly mean: number; readonly max: number };
  /** Furthest beyond the centreline; final only. */
  readonly overshoot_m: number | null;
  /** Of the threshold, where the turn began; base only. */
  readonly angle_behind_wing_deg: number | null;
  readonly planned_angle_deg: number | null;
}

export interface GateReport {
  readonly circuit: number;
  readonly height_ft: number;
  readonly at_s: number;
  /** Elevation of the wheels seen from the aim point. */
  readonly slope_deg: number;
  readonly lights: string | null;
  readonly ias_kt: number;
  /** + down. */
  readonly sink_fpm: number;
  readonly centreline_m: number;
  readonly bank_deg: number;
  readonly stabilised: boolean;
  readonly why: readonly string[];
  /** The same by kind. */
  readonly faults: readonly GateFault[];
}

export interface GoAroundReport {
  /** Null: it was due and was not flown. */
  readonly at_s: number | null;
  readonly height_ft: number | null;
  /** Null: nothing asked for it. */
  readonly due_at_s: number | null;
  readonly why: string;
  /** What asked; null: nothing did. */
  readonly due: DueId | null;
  readonly circuit: number;
  readonly gate_ft: number | null;
}

export interface TouchdownReport {
  readonly circuit: number;
  readonly at_s: number;
  readonly past_threshold_m: number;
  readonly past_aim_m: number;
  readonly past_specified_m: number;
  readonly sink_fpm: number;
  readonly ias_kt: number;
  readonly centreline_m: number;
  readonly crab_deg: number;
  readonly drift_kt: number;
  readonly pitch_deg: number;
  readonly bounces: number;
}

export interface StopReport {
  readonly past_threshold_m: number;
  readonly remaining_m: number;
  readonly centreline_m: number;
}

export type Band = 'green' | 'amber' | 'red' | 'not-judged';

export interface ItemReport {
  /** The row of the table of rules that it was judged by: `downwind-height`. */
  readonly id: string;
  /** Counted from 1; what looks at a whole session stands with the first. */
  readonly circuit: number;
  readonly leg: LegName;
  readonly value: number | null;
  readonly unit: string;
  readonly target: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly band: Band;
  readonly source: string;
}

export interface SafetyReport {
  /** Row of the table of safety stops; `went-on`: a go-around was due and not flown. */
  readonly id: string;
  readonly at_s: number;
  readonly what: string;
}

/** What lies behind rows that are outside, as far as it can be seen from the track. */
export interface CauseReport {
  readonly id: CauseId;
  readonly circuit: number;
  readonly at_s: number;
  /** In the unit that its words say. */
  readonly amount: number;
  readonly band: 'amber' | 'red';
}

export const OUTCOMES = [
  'stopped',
  'rejected-take-off',
  'landed-out',
  'ran-off',
  'crashed',
  'loss-of-control',
  'left-the-circuit',
  'refused',
  'time-up',
  // Left when the leg that the exercise is for was over; only by hand, a flight without a screen goes on
  'practised',
] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** Ended as it may, or flown as far as its exercise goes. */
export const isAskedEnd = (outcome: Outcome, success: readonly Outcome[]): boolean =>
  outcome === 'practised' || success.includes(outcome);

export interface Report {
  readonly legs: readonly LegReport[];
  readonly turns: readonly TurnReport[];
  readonly gates: readonly GateReport[];
  readonly go_arounds: readonly GoAroundReport[];
  readonly touchdowns: readonly TouchdownReport[];
  readonly stop: StopReport | null;
  /** Past which edge of the runway it rolled; null: it did not. */
  readonly ran_off: RanOffAt | null;
  readonly items: readonly ItemReport[];
  readonly safety: readonly SafetyReport[];
  readonly causes: readonly CauseReport[];
}

/** Of a flight of which there is nothing to say. */
export const EMPTY_REPORT: Report = {
  legs: [],
  turns: [],
  gates: [],
  go_arounds: [],
  touchdowns: [],
  stop: null,
  ran_off: null,
  items: [],
  safety: [],
  causes: [],
};
