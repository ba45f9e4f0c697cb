import type { Snapshot } from '../../simulation/snapshot.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import { meanOf, newMeasure, takeIn } from '../measure.ts';
import type { FlareMemory, LessonMemory } from '../memory.ts';

/** Sink and attitude of the approach are what they are between these heights. */
const APPROACH_FROM_M = mFromFt(150); // our choice: short final
const APPROACH_TO_M = mFromFt(60); // our choice: above any round-out
/**
 * Once half of that sink is gone with the nose raised it is a round-out: a gust takes the sink away too, but only
 * the pilot raises the nose. It began where nearly all of the sink was still there, or the nose was still where the
 * approach had it (estimates).
 */
const BEGUN_SHARE = 0.9; // our choice: what tells a round-out from a gust
const STOPPED_SHARE = 0.5; // our choice: what tells a round-out from a gust
const BEGUN_RAD = radFromDeg(0.75); // our choice: what tells a round-out from a gust
const RAISED_RAD = radFromDeg(1.5); // our choice: what tells a round-out from a gust
/** A sink that is back so soon was only lent by a gust, and with the nose back too it is an approach again. */
const LENT_S = 4; // our choice: what tells a round-out from a gust
const LAG_LOOKS = 3; // our choice: smooths what a few looks show
const WALKING_MPS = mpsFromKt(15); // our choice: slower is no landing roll
const PRESSED = 0.05; // our choice: less is a resting foot

export const beginFlare = (): FlareMemory => ({
  approachSink: newMeasure(),
  approachPitch: newMeasure(),
  smoothSinkMps: 0,
  smoothPitchRad: 0,
  begunM: 0,
  begunAlongM: 0,
  roundOutM: null,
  roundOutAtS: 0,
  roundOutAlongM: 0,
});

/** Watches the sink of the approach and where it is stopped. */
export const watchFlare = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { flare } = m;
  const { clearM, alongM } = lesson.where;
  flare.smoothSinkMps += (-s.verticalSpeedMps - flare.smoothSinkMps) / LAG_LOOKS;
  flare.smoothPitchRad += (s.pitchRad - flare.smoothPitchRad) / LAG_LOOKS;
  if (clearM > APPROACH_FROM_M) {
    if (flare.approachSink.count > 0) {
      flare.approachSink = newMeasure();
      flare.approachPitch = newMeasure();
    }
    flare.roundOutM = null;
    return;
  }
  if (clearM > APPROACH_TO_M) {
    takeIn(flare.approachSink, -s.verticalSpeedMps);
    takeIn(flare.approachPitch, s.pitchRad);
    flare.begunM = clearM;
    flare.begunAlongM = alongM;
    return;
  }
  const sink = meanOf(flare.approachSink);
  const pitch = meanOf(flare.approachPitch);
  if (sink === null || pitch === null || s.onGround) return;
  const raisedRad = flare.smoothPitchRad - pitch;
  const sinking = flare.smoothSinkMps > BEGUN_SHARE * sink;
  if (flare.roundOutM !== null) {
    const approachAgain = raisedRad < BEGUN_RAD || s.timeS - flare.roundOutAtS < LENT_S;
    if (!sinking || !approachAgain) return;
    flare.roundOutM = null;
  }
  const stopped = flare.smoothSinkMps < STOPPED_SHARE * sink;
  if (sinking || (raisedRad < BEGUN_RAD && !stopped)) {
    flare.begunM = clearM;
    flare.begunAlongM = alongM;
  }
  if (!stopped || raisedRad < RAISED_RAD) return;
  flare.roundOutM = flare.begunM;
  flare.roundOutAtS = s.timeS;
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
