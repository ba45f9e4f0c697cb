import type { CircuitLeg } from '../circuit/types.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { wrapPi } from '../units/angles.ts';
import type { Lesson } from './lesson.ts';
import { newMeasure, takeIn } from './measure.ts';
import type { LessonMemory, Stretch } from './memory.ts';
import { type LegName, turnOnto } from './names.ts';

/** Seconds after a roll-out before speed, height and track are assessed (common practice). */
const SETTLE_S = 8;
const CLIMBING_MPS = 1;

/** Which planned leg a stretch is measured against; the rest is measured from the centreline. */
const PLANNED: Partial<Record<LegName, CircuitLeg>> = {
  upwind: 'upwind',
  crosswind: 'crosswind',
  downwind: 'downwind',
  base: 'base',
  final: 'final',
};

const ON_THE_CENTRELINE: ReadonlySet<LegName> = new Set([
  'line-up',
  'take-off-roll',
  'upwind',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
  'go-around',
]);

export const beginStretch = (circuit: number, leg: LegName, fromS: number, heightM: number): Stretch => ({
  circuit,
  leg,
  fromS,
  toS: fromS,
  heightM: newMeasure(),
  iasMps: newMeasure(),
  bankRad: newMeasure(),
  trackErrorM: newMeasure(),
  settledIasMps: newMeasure(),
  levelHeightM: newMeasure(),
  trackOffRad: newMeasure(),
  fromHeightM: heightM,
  endHeightM: heightM,
  endStallIasMps: 0,
});

/** Adds one look to the stretch that is being flown. */
export const takeInLook = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const now = m.now;
  const { where } = lesson;
  now.toS = s.timeS;
  now.endHeightM = s.heightM;
  now.endStallIasMps = s.stallIasMps;
  takeIn(now.heightM, s.heightM);
  takeIn(now.iasMps, s.iasMps);
  takeIn(now.bankRad, s.bankRad);
  if (turnOnto(now.leg) !== null) return;
  const planned = PLANNED[now.leg];
  if (ON_THE_CENTRELINE.has(now.leg)) takeIn(now.trackErrorM, where.acrossM);
  else if (planned !== undefined) {
    const line = lesson.lines[planned];
    const eastM = s.eastM - line.eastM;
    const northM = s.northM - line.northM;
    takeIn(now.trackErrorM, eastM * line.cosTrack - northM * line.sinTrack);
  }
  if (planned === undefined || s.timeS - now.fromS < SETTLE_S) return;
  // The climbing speed is over where the climb is.
  if (planned !== 'crosswind' || s.indicatedVerticalSpeedMps > CLIMBING_MPS) {
    takeIn(now.settledIasMps, m.smoothIasMps);
  }
  takeIn(now.trackOffRad, wrapPi(s.trackRadT - lesson.lines[planned].trackRadT));
  // Level until abeam the threshold: a descent may begin there.
  if (planned === 'downwind' && where.alongM > 0) takeIn(now.levelHeightM, s.heightM);
};

/** A stretch that is over changes no more; frozen, every keyframe can share it. */
export const closeStretch = (stretch: Stretch): Stretch => {
  for (const part of Object.values(stretch)) Object.freeze(part);
  return Object.freeze(stretch) as Stretch;
};
