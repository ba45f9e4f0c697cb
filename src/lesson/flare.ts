import type { Snapshot } from '../simulation/snapshot.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Lesson } from './lesson.ts';
import { meanOf, newMeasure, takeIn } from './measure.ts';
import type { FlareMemory, LessonMemory } from './memory.ts';

/** The sink of the approach is what it is between these heights. */
const APPROACH_FROM_M = mFromFt(120);
const APPROACH_TO_M = mFromFt(60);
/** Once half of that sink is gone it is a round-out, and it began where nearly all of it was still there. */
const BEGUN_SHARE = 0.9;
const STOPPED_SHARE = 0.5;
const SINK_LAG_LOOKS = 3;
const WALKING_MPS = mpsFromKt(15);
const PRESSED = 0.05;

export const beginFlare = (): FlareMemory => ({
  approachSink: newMeasure(),
  smoothSinkMps: 0,
  begunM: 0,
  begunAlongM: 0,
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
    flare.begunM = clearM;
    flare.begunAlongM = alongM;
    return;
  }
  const sink = meanOf(flare.approachSink);
  if (sink === null || flare.roundOutM !== null || s.onGround) return;
  if (flare.smoothSinkMps > BEGUN_SHARE * sink) {
    flare.begunM = clearM;
    flare.begunAlongM = alongM;
  }
  if (flare.smoothSinkMps > STOPPED_SHARE * sink) return;
  flare.roundOutM = flare.begunM;
  flare.roundOutAlongM = flare.begunAlongM;
};

/** How long the nose wheel stays off after the touch. */
export const watchNose = (m: LessonMemory, s: Readonly<Snapshot>): void => {
  const last = m.touchdowns[m.touchdowns.length - 1];
  if (last === undefined || m.legs.leg !== 'landing-roll' || !m.wheels.landing || m.noseDown) return;
  if (s.noseWheelOnGround) m.noseDown = true;
  else last.noseUpS = s.timeS - last.atS;
};

/** How long the brakes are kept on without a break in the landing roll. */
export const watchBrakes = (m: LessonMemory, s: Readonly<Snapshot>): void => {
  const last = m.touchdowns[m.touchdowns.length - 1];
  const braking = m.legs.leg === 'landing-roll' && s.brake > PRESSED && s.groundspeedMps > WALKING_MPS;
  m.brakeFromS = braking ? (m.brakeFromS ?? s.timeS) : null;
  if (m.brakeFromS === null || last === undefined) return;
  last.longestBrakeS = Math.max(last.longestBrakeS, s.timeS - m.brakeFromS);
};
