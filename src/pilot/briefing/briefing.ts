import type { Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import type { Shape } from '../../simulation/shape.ts';
import type { Task } from '../../simulation/task.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Outline } from './bad-ground.ts';
import type { Habit, RegimeName } from './habits.ts';

/** A corner of the planned circuit, circuit axes. */
export interface Corner {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly bankRad: number;
  /** Left to fly to the ground, from where it begins and from where it ends. */
  readonly toGoFromM: number;
  readonly toGoToM: number;
}

export type CornerName = keyof CircuitPlan['turns'];

/** What the pilot knows before the flight: the circuit, the aeroplane's habits, the forecast on the runway. */
export interface Briefing {
  readonly shape: Shape;
  readonly runway: Runway;
  readonly plan: CircuitPlan;
  readonly side: 1 | -1;
  readonly rudderAssist: boolean;
  readonly circuits: number;
  readonly habits: Readonly<Record<RegimeName, Habit>>;
  readonly corners: Readonly<Record<CornerName, Corner>>;
  /** No crosswind turn below this height of the wheels. */
  readonly crosswindTurnM: number;
  /** The planned descent: height of the wheels by what is left to fly, rising. */
  readonly profile: { readonly toGoM: readonly number[]; readonly heightM: readonly number[] };
  readonly approachTangent: number;
  readonly aimGroundM: number;
  readonly eyeHeightM: number;
  /** Forecast across the runway, + pushes towards the circuit side. */
  readonly crosswindMps: number;
  /** Landing beyond here is given up, at first; and never beyond the second. */
  readonly latestTouchdownM: number;
  readonly lastTouchdownM: number;
  /** Beyond the painted aim point, for today's wind. */
  readonly aimShiftM: number;
  /** Aimed at over the threshold. */
  readonly fenceIasMps: number;
  /** What the exercise asks for beyond the plain circuit. */
  readonly task: Task;
  readonly glideIasMps: number;
  /** Woods, water and houses of the map, in circuit axes. */
  readonly badGround: readonly Outline[];
  readonly feel: Feel;
}

/** What hands have learnt about this aeroplane's answers. */
export interface Feel {
  /** Stick gains are learnt at this speed. */
  readonly iasMps: number;
  /** Stalling speed with the landing flap. */
  readonly stallIasMps: number;
  /** Aileron for a roll of one radian a second, times the speed it is done at. */
  readonly aileronMps: number;
  /** Angle of attack that carries the weight, times dynamic pressure. */
  readonly alphaPa: number;
  /** Elevator (trailing edge up) for one radian of angle of attack. */
  readonly elevatorPerAlpha: number;
  /** Throttle for one metre a second of climb at a held speed. */
  readonly powerPerClimb: number;
  /** Elevator for one radian a second of pitching, times the speed. */
  readonly elevatorPerPitchRateM: number;
  /** Elevator to hold the nose up when the ground flattens the flow completely. */
  readonly groundElevatorRad: number;
  /** Bank at the touch that keeps the wing tip well clear of it. */
  readonly steepestLowRad: number;
  /** Bank that balances the slip of full rudder, per pascal of dynamic pressure. */
  readonly slipBankPerPa: number;
  /** Aileron against the roll that full rudder's slip makes. */
  readonly crossedAileron: number;
  /** Right rudder that balances full power at the climbing speed. */
  readonly climbRudder: number;
  /** Rudder that goes with the aileron. */
  readonly rudderPerAileron: number;
}

/** The turn to final is not flown steeper than this, whatever the plan: South African FI procedures allow 30 deg. */
export const STEEPEST_FINAL_BANK_RAD = radFromDeg(26);
