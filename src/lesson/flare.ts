import type { Snapshot } from '../simulation/snapshot.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Lesson } from './lesson.ts';
import { meanOf, newMeasure, takeIn } from './measure.ts';
import type { FlareMemory, LessonMemory } from './memory.ts';

/** The sink of the approach is what it is between these heights. */
const APPROACH_FROM_M = mFromFt(120);
const APPROACH_TO_M = mFromFt(60);
/** The round-out has begun where a quarter of that sink is gone. */
const STOPPED_SHARE = 0.75;
const SINK_LAG_LOOKS = 4;
const WALKING_MPS = mpsFromKt(15);
const PRESSED = 0.05;

export const beginFlare = (): FlareMemory => ({
  approachSink: newMeasure(),
  smoothSinkMps: 0,
  roundOutM: null,
  roundOutAlongM: 0,
});

/** Watches the sink of the approach and where it is stopped. */
export const watchFlare = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { flare } = m;
  const { clearM, alongM } = lesson.where;
  flare.smoothSinkMps += (-s.verticalSpeedMps - flare.smoothSinkMps) / SINK_LAG_LOOKS;
  if (clearM > APPROACH_FROM_M) {
    if (flare.approachSink.count > 0) flare.approachSink = newMeasure();
    flare.roundOutM = null;
    return;
  }
  if (clearM > APPROACH_TO_M) {
    takeIn(flare.approachSink, -s.verticalSpeedMps);
    return;
  }
  const sink = meanOf(flare.approachSink);
  if (sink === null || flare.roundOutM !== null || s.onGround) return;
  if (flare.smoothSinkMps > STOPPED_SHARE * sink) return;
  flare.roundOutM = clearM;
  flare.roundOutAlongM = alongM;
};

/** How long the brakes are kept on without a break in the landing roll. */
export const watchBrakes = (m: LessonMemory, s: Readonly<Snapshot>): void => {
  const last = m.touchdowns[m.touchdowns.length - 1];
  const braking = m.legs.leg === 'landing-roll' && s.brake > PRESSED && s.groundspeedMps > WALKING_MPS;
  m.brakeFromS = braking ? (m.brakeFromS ?? s.timeS) : null;
  if (m.brakeFromS === null || last === undefined) return;
  last.longestBrakeS = Math.max(last.longestBrakeS, s.timeS - m.brakeFromS);
};
