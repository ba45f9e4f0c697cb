import type { Snapshot } from '../../simulation/snapshot.ts';
import { degFromRad, ftFromM, ktFromMps, mFromFt, mFromNmi, radFromDeg } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';

/**
 * Safety stops: red whatever the rest of the flight was like. A table: what must hold, and for how long before
 * it counts, so that one gust is not a fault. Limits after design of the lesson: speed below 1.2 Vs and banks
 * as named there; the seconds are common practice.
 */
export interface SafetyStop {
  readonly id: string;
  readonly lastsS: number;
  holds(m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): boolean;
  words(m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): string;
}

const LOW_M = mFromFt(20); // our choice: below it the round-out
const HIGH_M = mFromFt(500); // our choice: above it there is room to recover
const SCREEN_M = mFromFt(50); // definition: screen height of take-off
const BELOW_LIGHTS_RAD = radFromDeg(0.5); // our choice: as the stabilised slope allows

/** Low and flying, the hold-off excepted; just after lift-off the speed is still being gained. */
const speedMatters = (m: LessonMemory, clearM: number): boolean => {
  if (m.legs.leg === 'hold-off' || m.legs.leg === 'landing-roll') return false;
  const lowest = m.legs.leg === 'upwind' && m.legs.highestClearM < SCREEN_M ? SCREEN_M : LOW_M;
  return clearM > lowest && clearM < HIGH_M;
};

const safeIasMps = (s: Readonly<Snapshot>): number =>
  1.2 * s.stallIasMps * Math.sqrt(Math.max(0, s.loadFactor));
const ft = (m: number): string => fixed(ftFromM(m));

/**
 * Where each limit is from. 30 deg in the turn to final: South African instructor procedures. 1.2 times the stalling
 * speed, 40 deg below 500 ft, the lights from 200 ft up and half a mile out, and the seconds: common practice.
 */
export const SAFETY_STOPS: readonly SafetyStop[] = [
  {
    id: 'slow',
    lastsS: 1,
    holds: (m, lesson, s) => speedMatters(m, lesson.where.clearM) && s.iasMps < safeIasMps(s),
    words: (_, lesson, s) =>
      `${fixed(ktFromMps(s.iasMps))} kt at ${ft(lesson.where.clearM)} ft: below 1.2 times the stalling speed here, ${fixed(ktFromMps(safeIasMps(s)))} kt`,
  },
  {
    id: 'warner',
    lastsS: 0.5,
    holds: (m, lesson, s) => s.warner && speedMatters(m, lesson.where.clearM),
    words: (_, lesson) => `the stall warner sounded at ${ft(lesson.where.clearM)} ft`,
  },
  {
    id: 'bank-low',
    lastsS: 0.5,
    holds: (_, lesson, s) => lesson.where.clearM < HIGH_M && Math.abs(s.bankRad) > radFromDeg(40),
    words: (_, lesson, s) =>
      `${fixed(degFromRad(Math.abs(s.bankRad)))} deg of bank at ${ft(lesson.where.clearM)} ft, allowed 40 deg`,
  },
  {
    id: 'bank-final-turn',
    lastsS: 1,
    holds: (m, _, s) => m.legs.leg === 'turn-to-final' && Math.abs(s.bankRad) > radFromDeg(30),
    words: (_, __, s) =>
      `${fixed(degFromRad(Math.abs(s.bankRad)))} deg of bank in the turn to final, allowed 30 deg`,
  },
  {
    id: 'four-reds',
    lastsS: 1,
    holds: (m, lesson, s) => {
      const { lights, aimM } = lesson.runway;
      return (
        lights !== null &&
        Math.abs(aimM - lights.alongM) <= 50 &&
        // Where the chosen circuit itself comes in below the lights, they say nothing about the pilot.
        lesson.plan.approachRad > lights.angleRad - BELOW_LIGHTS_RAD &&
        m.lights.length > 0 &&
        !/[^R]/.test(m.lights) &&
        s.verticalSpeedMps < -0.5 &&
        lesson.where.heightM > mFromFt(200) &&
        lesson.where.alongM < -mFromNmi(0.5)
      );
    },
    words: (_, lesson) => `all lights red and sinking at ${ft(lesson.where.heightM)} ft`,
  },
];

/** What a start in the air has given is not the pilot's for so long. */
const GRACE_S = 5; // our choice: time to look round

export const watchSafety = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  if (m.startedInAir && s.timeS < GRACE_S) return;
  for (const stop of SAFETY_STOPS) {
    const spell = m.spells[stop.id];
    if (spell === undefined) continue;
    if (s.onGround || !stop.holds(m, lesson, s)) {
      spell.fromS = null;
      spell.told = false;
      continue;
    }
    spell.fromS ??= s.timeS;
    if (spell.told || s.timeS - spell.fromS < stop.lastsS) continue;
    spell.told = true;
    m.safety.push({ id: stop.id, atS: spell.fromS, what: stop.words(m, lesson, s) });
  }
};
