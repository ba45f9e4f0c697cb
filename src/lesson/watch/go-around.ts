import { sin } from '../../maths/functions.ts';
import { ftFromM, ktFromMps, mFromFt, mpsFromKt } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import { askGoAround } from './dues.ts';
import { FULL_POWER } from './full-power.ts';

/**
 * When a go-around is due and whether it came. A go-around is never wrong: one that nothing asked for is noted
 * as safe, not needed. Not down in the first third of the runway, or drift that is not held: FAA-H-8083-3C ch. 9,
 * p. 203 and 204; where the specified point lies beyond the first third, 400 ft beyond it (the tolerance of
 * FAA-S-ACS-6 IV.B); how much drift, for how long, is common practice. Going on is a safety stop, but not out of
 * a hold-off: that is judged by its rows and by the runway that is left.
 */
const LATE_M = mFromFt(400);
const ANSWER_S = 8; // common practice
/** With full power a second touch is accepted and flown out of (FAA-H-8083-3C ch. 9, bounces). */
const AWAY_S = 20;
/** Nobody decides quicker (common practice): where the wheels touch sooner, the point of touchdown is judged. */
const TOUCHING_S = 2;
const HIGH_BOUNCE_M = mFromFt(5); // common practice
const DRIFT_MPS = mpsFromKt(5); // common practice
const DRIFT_LASTS_S = 2; // common practice

/** The safety stop of a go-around that was due and not flown. */
export const WENT_ON = 'went-on';

/** Conditions that are remembered from look to look. */
export const GO_AROUND_SPELLS = ['first-third', 'high-bounce', 'drift'] as const;

/** One was asked for, and may still be answered. */
export const isGoAroundDue = (m: LessonMemory): boolean => m.dues.some((d) => !d.answered && !d.ignored);

/** Call at every look, after the legs; `changed` says that the leg has just changed. */
export const watchGoArounds = (m: LessonMemory, lesson: Lesson, changed: boolean): void => {
  const { where, runway } = lesson;
  const flaring = m.legs.leg === 'hold-off';
  const latestM = Math.max(runway.landingLengthM / 3, runway.specifiedM + LATE_M);
  // With full power on the decision has been made already
  const decided = where.throttle > FULL_POWER;
  const floating = flaring && !decided && !m.wheels.landing && where.alongM > latestM;
  if (justBegan(m, 'first-third', floating)) {
    askGoAround(m, {
      dueS: where.timeS,
      heightM: where.clearM,
      why: `not down ${fixed(latestM)} m past the threshold`,
      id: 'first-third',
      ofHoldOff: true,
    });
  }
  const hopM = m.wheels.highestHopM;
  const landing = m.wheels.landing && (flaring || m.legs.leg === 'landing-roll');
  if (justBegan(m, 'high-bounce', landing && !where.onGround && hopM > HIGH_BOUNCE_M)) {
    const why = `bounced to ${fixed(ftFromM(hopM))} ft`;
    askGoAround(m, { dueS: where.timeS, heightM: where.clearM, why, id: 'high-bounce' });
  }
  watchDrift(m, lesson, flaring && !m.wheels.landing && !where.onGround);
  const open = isGoAroundDue(m);
  const awayAgain = m.legs.leg === 'go-around' || (m.legs.leg === 'upwind' && open);
  // Where the climb began, as its time is; a memory of an earlier version has not kept that
  const fromM = m.legs.climbingS === null ? where.heightM : (m.legs.climbingFromM ?? where.heightM);
  if (changed && awayAgain) noteGoAround(m, fromM, m.legs.circuit);
  // Touched with the power on already, and away: a go-around as well, in the circuit of the touch
  const touched = m.touchdowns[m.touchdowns.length - 1];
  if (changed && m.legs.leg === 'upwind' && touched?.underPower && !isNoted(m, touched.circuit))
    noteGoAround(m, fromM, touched.circuit);
  const last = m.dues[m.dues.length - 1];
  if (last?.ofHoldOff && where.onGround && where.timeS - last.dueS < TOUCHING_S) m.dues.pop();
  for (const d of m.dues) {
    const overS = where.timeS - d.dueS;
    const answering = where.throttle > FULL_POWER && overS < AWAY_S;
    if (d.answered || d.ignored || overS < ANSWER_S || answering) continue;
    d.ignored = true;
    if (!d.ofHoldOff)
      m.safety.push({ id: WENT_ON, atS: d.dueS, what: `went on without going around: ${d.why}` });
  }
};

/** Over the ground, off the centreline, in the hold-off. */
const watchDrift = (m: LessonMemory, { where, plan }: Lesson, holdingOff: boolean): void => {
  const spell = m.spells.drift;
  if (spell === undefined) return;
  // The track counts towards the circuit side
  const rightMps = plan.side * where.groundspeedMps * sin(where.trackRad);
  if (!holdingOff || Math.abs(rightMps) < DRIFT_MPS) {
    spell.fromS = null;
    spell.told = false;
    return;
  }
  spell.fromS ??= where.timeS;
  if (spell.told || where.timeS - spell.fromS < DRIFT_LASTS_S) return;
  spell.told = true;
  const to = rightMps > 0 ? 'right' : 'left';
  askGoAround(m, {
    dueS: where.timeS,
    heightM: where.clearM,
    why: `drift not held: ${fixed(ktFromMps(Math.abs(rightMps)))} kt to the ${to}`,
    id: 'drift',
    ofHoldOff: true,
  });
};

const justBegan = (m: LessonMemory, id: string, holds: boolean): boolean => {
  const spell = m.spells[id];
  if (spell === undefined) return false;
  const began = holds && !spell.told;
  spell.told = holds;
  return began;
};

const isNoted = (m: LessonMemory, circuit: number): boolean =>
  m.goArounds.some((flown) => flown.circuit === circuit);

const noteGoAround = (m: LessonMemory, heightM: number, circuit: number): void => {
  const asked = m.dues.filter((d) => !d.answered);
  const open = asked.filter((d) => !d.ignored);
  for (const d of asked) {
    d.answered = true;
    closeFact(d);
  }
  const first = open[0] ?? asked[asked.length - 1];
  const flown = {
    circuit,
    atS: m.legs.fromS,
    heightM,
    dueS: first?.dueS ?? null,
    due: first?.id ?? null,
    why: first?.why ?? 'safe, not needed',
  };
  m.goArounds.push(closeFact(flown));
};
