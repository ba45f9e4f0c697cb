import { radFromDeg } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { HALF_DENSITY_KGPM3 } from './briefing/density.ts';
import { type Habit, pitchFor } from './briefing/habits.ts';

const TAIL_MARGIN_RAD = radFromDeg(5); // our choice: kept to where the tail touches
/** On soft ground as slow as it will fly. */
const SOFT_TAIL_MARGIN_RAD = radFromDeg(3.5); // our choice: kept to where the tail touches
/** Sink of a habit near idle: the angle of attack at its speed hardly depends on the power. */
const IDLE_SINK_MPS = -2; // estimate

type Known = Pick<Briefing, 'shape' | 'task' | 'feel'>;

/** The nose goes no higher above the runway in the hold-off. */
export const landingAttitudeRad = ({ shape, task }: Known): number =>
  shape.tailStrikeRad - (task.technique === 'soft-field' ? SOFT_TAIL_MARGIN_RAD : TAIL_MARGIN_RAD);

/** Attitude of level flight at this habit's speed, with hardly any power. */
export const levelAttitudeRad = (habit: Habit): number =>
  pitchFor(habit, IDLE_SINK_MPS) - IDLE_SINK_MPS / habit.iasMps;

/** The speed at which the landing attitude just carries the weight: by then the wheels are to touch. */
export const lastIasMps = (b: Known, habit: Habit): number => {
  const pressurePa = HALF_DENSITY_KGPM3 * habit.iasMps * habit.iasMps;
  const further = Math.max(0, landingAttitudeRad(b) - levelAttitudeRad(habit));
  return habit.iasMps / Math.sqrt(1 + (further * pressurePa) / b.feel.alphaPa);
};
