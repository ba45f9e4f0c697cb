import { hypot } from '../maths/functions.ts';
import type { LegStart } from '../simulation/scenario.ts';
import { wrapPi } from '../units/angles.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { RegimeName } from './briefing/habits.ts';
import type { PhaseName } from './phase-name.ts';
import type { PilotView } from './view.ts';

type AirPhase = Exclude<LegStart, 'line-up'>;

const DIRECTIONS: Readonly<Record<AirPhase, number>> = {
  upwind: 0,
  crosswind: Math.PI / 2,
  downwind: Math.PI,
  base: -Math.PI / 2,
  final: 0,
};

/** Metres of distance that one radian of wrong direction counts for. */
const ASTRAY_M = 900; // our choice: tells which leg a start belongs to
const ROLLING_MPS = mpsFromKt(15); // our choice: tells which leg a start belongs to
const LOW_M = mFromFt(30); // our choice: tells which leg a start belongs to

/** Distance from a leg's line, counted with how far the track is off its direction. */
const far = (b: Briefing, v: Readonly<PilotView>, phase: AirPhase): number => {
  const { crosswind, downwind, base, final } = b.corners;
  const ends: Readonly<Record<AirPhase, readonly [number, number, number, number]>> = {
    upwind: [b.runway.aimM, 0, crosswind.fromX, crosswind.fromY],
    crosswind: [crosswind.fromX, crosswind.fromY, downwind.fromX, downwind.fromY],
    downwind: [downwind.fromX, downwind.fromY, base.fromX, base.fromY],
    base: [base.fromX, base.fromY, final.fromX, final.fromY],
    final: [final.fromX, 0, b.runway.aimM, 0],
  };
  const [x0, y0, x1, y1] = ends[phase];
  const length = Math.max(1, hypot(x1 - x0, y1 - y0));
  const along = ((v.xM - x0) * (x1 - x0) + (v.yM - y0) * (y1 - y0)) / length;
  const held = Math.min(length, Math.max(0, along));
  const away = hypot(v.xM - x0 - (held * (x1 - x0)) / length, v.yM - y0 - (held * (y1 - y0)) / length);
  return away + ASTRAY_M * Math.abs(wrapPi(v.trackRad - DIRECTIONS[phase]));
};

/** Which phase this is: the leg that was asked for, or the nearest one in place and direction. */
export const phaseHere = (
  b: Briefing,
  v: Readonly<PilotView>,
  asked: AirPhase | null,
  throttle: number,
): PhaseName => {
  if (v.onGround) return v.groundspeedMps > ROLLING_MPS && throttle < 0.5 ? 'landing-roll' : 'take-off';
  if (asked !== null) return asked;
  const phases = Object.keys(DIRECTIONS) as AirPhase[];
  const nearest = phases.reduce((best, phase) => (far(b, v, phase) < far(b, v, best) ? phase : best));
  if (nearest === 'final' && v.clearanceM < LOW_M / 4) return 'round-out';
  return nearest;
};

/** Which habit goes with a phase and the flap that is out. */
export const regimeIn = (b: Briefing, phase: PhaseName, stage: number): RegimeName => {
  if (phase === 'take-off') return 'take-off';
  if (phase === 'final' || phase === 'round-out' || phase === 'landing-roll')
    return stage >= b.habits.landing.stage ? 'landing' : stage >= b.habits.final.stage ? 'final' : 'downwind';
  if (phase === 'base') return stage >= b.habits.base.stage ? 'base' : 'downwind';
  if (phase === 'downwind') return stage >= b.habits.downwind.stage && stage > 0 ? 'downwind' : 'cruise';
  if (phase === 'go-around') return 'going-around';
  return stage > 0 ? 'take-off' : 'climb';
};
