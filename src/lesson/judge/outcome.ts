import { hypot } from '../../maths/functions.ts';
import { ftFromM } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import type { Outcome } from './report.ts';

export interface Ending {
  readonly outcome: Outcome;
  readonly why: string;
}

const aside = (m: number): string =>
  `${fixed(Math.abs(m), 1)} m ${m >= 0 ? 'right' : 'left'} of the centreline`;

/** Rolling this far off the surface, or this far from a landing beside it, nobody waits for the stop. */
const LOST_M = 100; // our choice: no way back to the runway
const LOST_IN_THE_FIELDS_M = 1000; // our choice: no stop on a runway is coming

/** A roll that has left the runway for good, or null. */
const rolledAway = (m: LessonMemory, { runway }: Lesson): Ending | null => {
  const { onGround, alongM, acrossM } = m.wheels;
  if (!onGround) return null;
  const last = m.touchdowns[m.touchdowns.length - 1];
  if (m.landedOut && last !== undefined) {
    const rolledM = hypot(alongM - last.alongM, acrossM - last.acrossM);
    if (rolledM < LOST_IN_THE_FIELDS_M) return null;
    return { outcome: 'landed-out', why: `Landed off the runway and rolled on for ${fixed(rolledM)} m.` };
  }
  if (!m.ranOff) return null;
  const beyondM = Math.max(
    alongM - runway.surfaceEndM,
    runway.surfaceStartM - alongM,
    Math.abs(acrossM) - runway.widthM / 2,
  );
  if (beyondM < LOST_M) return null;
  return {
    outcome: 'ran-off',
    why: `Left the runway while rolling and was ${fixed(beyondM)} m off it, still moving.`,
  };
};

const stopped = (m: LessonMemory, lesson: Lesson): Ending | null => {
  const { stop } = m;
  if (stop === null) return null;
  const place = `${fixed(stop.alongM)} m past the threshold, ${aside(stop.acrossM)}`;
  if (m.ranOff) return { outcome: 'ran-off', why: `Left the runway while rolling and stopped ${place}.` };
  if (m.landedOut) return { outcome: 'landed-out', why: `Landed off the runway and stopped ${place}.` };
  if (m.touchdowns.length === 0) {
    return { outcome: 'rejected-take-off', why: `The take-off was given up; stopped ${place}.` };
  }
  const left = fixed(lesson.runway.surfaceEndM - stop.alongM);
  return { outcome: 'stopped', why: `Stopped ${place}, ${left} m of runway left.` };
};

/** How the flight has ended, or null while it still goes on. */
export const endingOf = (m: LessonMemory, lesson: Lesson): Ending | null => {
  if (m.ended !== null) return { outcome: m.ended, why: m.endedWhy };
  const atRest = stopped(m, lesson);
  if (atRest !== null) return atRest;
  const away = rolledAway(m, lesson);
  if (away !== null) return away;
  if (m.legs.leg !== 'left-the-circuit') return null;
  const { alongM, acrossM } = m.wheels;
  const where = `${fixed(alongM)} m along, ${aside(acrossM)}, at ${fixed(ftFromM(m.lastHeightM))} ft`;
  return { outcome: 'left-the-circuit', why: `Flew away from the circuit: ${where}.` };
};
