import { acrossM, alongM } from '../../aerodrome/runway.ts';
import { cos, sin } from '../../maths/functions.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt } from '../../units/conversions.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory, WheelMemory } from '../memory.ts';
import { FULL_POWER } from './full-power.ts';

/** A hop higher than this between two contacts is a bounce (common practice: about a foot). */
const BOUNCE_M = mFromFt(1);
/** Higher than this is a flight: what follows is another landing. */
const FLIGHT_M = mFromFt(50); // our choice: no bounce goes so high

export const beginWheels = (lesson: Lesson, s: Readonly<Snapshot>): WheelMemory => {
  const along = alongM(lesson.runway, s.eastM, s.northM);
  return {
    onGround: s.onGround,
    clearM: s.wheelClearanceM,
    alongM: along,
    acrossM: acrossM(lesson.runway, s.eastM, s.northM),
    highestHopM: 0,
    landing: false,
  };
};

/**
 * Watches the wheels every step. A touchdown is the first contact of a landing; its time, place and sink come
 * from the straight line between the last step in the air and the first on the ground.
 */
export const watchWheels = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>, stepS: number): void => {
  const wheels = m.wheels;
  const { runway } = lesson;
  const along = alongM(runway, s.eastM, s.northM);
  const across = acrossM(runway, s.eastM, s.northM);
  const clear = s.wheelClearanceM;
  if (!s.onGround && clear > wheels.highestHopM) wheels.highestHopM = clear;
  if (s.onGround && !wheels.onGround) {
    const fell = wheels.clearM - clear;
    const share = fell > 0 && wheels.clearM > 0 ? Math.min(1, wheels.clearM / fell) : 1;
    contact(m, lesson, s, {
      atS: s.timeS - (1 - share) * stepS,
      alongM: wheels.alongM + share * (along - wheels.alongM),
      acrossM: wheels.acrossM + share * (across - wheels.acrossM),
      sinkMps: Math.max(0, fell / stepS),
    });
    wheels.highestHopM = 0;
  }
  if (!s.onGround && wheels.highestHopM > FLIGHT_M) {
    wheels.landing = false;
    // Flown away from it: how the flight ends is the next landing's business
    m.landedOut = false;
    m.ranOff = false;
    m.ranOffAt = null;
  }
  wheels.onGround = s.onGround;
  wheels.clearM = clear;
  wheels.alongM = along;
  wheels.acrossM = across;
};

interface Contact {
  readonly atS: number;
  readonly alongM: number;
  readonly acrossM: number;
  readonly sinkMps: number;
}

const contact = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>, c: Contact): void => {
  if (m.legs.leg === 'take-off-roll' || m.legs.leg === 'line-up') return;
  const last = m.touchdowns[m.touchdowns.length - 1];
  if (m.wheels.landing && last !== undefined) {
    if (m.wheels.highestHopM > BOUNCE_M) last.bounces += 1;
    return;
  }
  // Skipping along the runway before the first real climb is still the take-off.
  if (m.wheels.highestHopM < BOUNCE_M || m.legs.highestClearM < mFromFt(15)) return;
  m.wheels.landing = true;
  m.noseDown = false;
  const { runway } = lesson;
  const { headingRadT } = runway;
  closeFact(last);
  m.touchdowns.push({
    circuit: m.legs.circuit,
    atS: c.atS,
    alongM: c.alongM,
    acrossM: c.acrossM,
    sinkMps: c.sinkMps,
    iasMps: s.iasMps,
    crabRad: wrapPi(s.headingRadT - headingRadT),
    driftMps: s.velocityEastMps * cos(headingRadT) - s.velocityNorthMps * sin(headingRadT),
    pitchRad: s.pitchRad,
    bounces: 0,
    onRunway: s.onRunway,
    noseFirst: s.noseWheelOnGround,
    roundOutM: m.flare.roundOutM,
    floatM: m.flare.roundOutM === null ? null : c.alongM - m.flare.roundOutAlongM,
    noseUpS: 0,
    longestBrakeS: 0,
    underPower: s.throttle > FULL_POWER,
  });
};
