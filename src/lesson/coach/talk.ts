import type { CircuitLeg } from '../../circuit/types.ts';
import type { Task } from '../../simulation/task.ts';
import { mFromFt, mpsFromFpm, radFromDeg } from '../../units/conversions.ts';
import type { LegName, TurnOnto } from '../names.ts';
import { currentList, isComplete } from '../procedures/watch-checks.ts';
import type { CoachContext, Word } from './context.ts';
import {
  bankWords,
  capital,
  circuitAltitudeWords,
  descentWords,
  flapWords,
  handWords,
  headingWords,
  heatFirst,
  IDLE,
  knots,
  powerWords,
  sinkWords,
} from './patter.ts';
import { isAbandoned } from './trouble.ts';
import { isTheTowersTurn, secondsAlong, secondsToTurn, turnAhead } from './turns-ahead.ts';

/**
 * What an instructor says to somebody who is talked through a circuit: what to do, when to do it, and the figures to
 * do it to, so that the words alone lead round. Order: climb, turn, level (attitude, power, trim), descend (heat,
 * power, speed), as UK/EASA exercises 12 and 13 and the South African instructor procedures have it.
 */
type Say = (c: CoachContext) => string;

/** Ended by the exercise's own technique, the power is not the coach's. */
const isGlide = ({ lesson, m }: CoachContext): boolean =>
  lesson.task.technique === 'glide' && m.legs.circuit === 1;

const onFinal: Say = (c) => {
  const { legs, approachIasMps } = c.lesson.plan;
  // With more flap out than planned here the plan's power is not what holds the slope
  const more = c.s.flapStage > legs.final.flapStage;
  const flap = flapWords(c, more ? c.s.flapStage : legs.final.flapStage);
  const speed = `${flap}, ${knots(approachIasMps)}`;
  if (isGlide(c))
    return `${knots(approachIasMps)}; flap in stages once the runway is sure; aim well into it.`;
  if (c.lesson.task.technique === 'slip')
    return `${capital(speed)}. High: into-wind wing down, opposite foot, hold the track; straight again by 200 feet.`;
  const power = more ? 'power for the slope' : `about ${powerWords(c, legs.final.steady, 'final')}`;
  return `${capital(speed)}, ${power}; keep the aim point still in the window.`;
};

const onBase: Say = (c) => {
  const { base } = c.lesson.plan.legs;
  if (isGlide(c)) return `${knots(base.iasMps)} with the nose; no flap yet; look how high the runway lies.`;
  return `${capital(flapWords(c, base.flapStage))}, ${knots(base.iasMps)}, about ${powerWords(c, base.steady, 'base')}; trim; let it come down.`;
};

const onDownwind: Say = (c) => {
  const { downwind } = c.lesson.plan.legs;
  if (c.s.heightM < c.lesson.plan.heightM - LEVEL_OFF_M)
    return `Downwind: climb on to ${circuitAltitudeWords(c)}, ${headingWords(c, 'downwind')}; then ${knots(downwind.iasMps)}.`;
  const flap =
    downwind.flapStage > 0 && !isGlide(c) ? `, inside the white arc ${flapWords(c, downwind.flapStage)}` : '';
  return `Downwind: ${circuitAltitudeWords(c)}, ${knots(downwind.iasMps)}, ${powerWords(c, downwind.steady, 'downwind')}, ${headingWords(c, 'downwind')}${flap}; trim.`;
};

/** The nose that much off the runway has to be straightened before the wheels touch. */
const CRAB_RAD = radFromDeg(3); // our choice: when it is worth saying

const roundOut: Say = ({ lesson, s }) => {
  const crabs = Math.abs(lesson.plan.legs.final.driftRad) > CRAB_RAD;
  const straighten = crabs ? '; straighten with the feet, wing down into the wind' : '';
  // To idle during the round-out (FAA-H-8083-3C p. 9-8), not closed before it is done (South African CAA p. 115, 271)
  const idles = s.engineDead || s.throttle < IDLE ? '' : ', and with it power to idle';
  const power = lesson.task.technique === 'soft-field' ? ', a little power stays' : idles;
  return `Round out: look far ahead, nose slowly up to level${power}${straighten}.`;
};

const goingAround: Say = (c) => {
  const { aeroplane } = c.lesson;
  const heat = c.s.carbHeat > 0 ? ', carburettor heat cold' : '';
  const flap = c.s.flapStage > 0 ? '; sink stopped, flap up by stages' : '';
  const gear = aeroplane.undercarriage.retractable ? '; climbing, gear up' : '';
  return `Full power${heat}; nose to the horizon, ${aeroplane.speeds.goAroundKt} knots, ${headingWords(c, 'upwind')}${flap}${gear}.`;
};

const ROLL: Partial<Record<Task['technique'], string>> & { readonly normal: string } = {
  normal: 'Straight with the feet, hold the nosewheel off, then brakes in short strokes.',
  'soft-field':
    'Straight with the feet, stick back, the nosewheel light all the way; no brakes, keep it rolling.',
  'short-field': 'Straight with the feet, nosewheel down, then brakes firmly, in strokes.',
};

const STILL_SINKING_MPS = -mpsFromFpm(200); // estimate: not yet rounded out

const ON_LEG: Partial<Record<LegName, Say>> = {
  'line-up': () => 'Runway clear: full power, smoothly, and straight with the feet.',
  'take-off-roll': ({ lesson }) =>
    `Airspeed alive. At ${knots(lesson.plan.rotateIasMps)} ease the nose up, and hold it there.`,
  upwind: (c) =>
    `Climb at ${knots(c.lesson.plan.legs.upwind.iasMps)}, ${headingWords(c, 'upwind')}, on the extended centreline; trim.`,
  downwind: onDownwind,
  base: onBase,
  final: onFinal,
  'hold-off': () => 'Hold it off: look far ahead, a little more back, and wait.',
  'landing-roll': ({ lesson }) => ROLL[lesson.task.technique] ?? ROLL.normal,
  'go-around': goingAround,
  'left-the-circuit': (c) =>
    `Away from the circuit: ${circuitAltitudeWords(c)}, turn back until the runway stands in the window, and join downwind.`,
};

/** Said at once; the rest once the leg has settled. */
const QUICK: ReadonlySet<LegName> = new Set(['take-off-roll', 'hold-off', 'landing-roll', 'go-around']);

const TURN_NOW_S = 1; // our choice: when it is worth saying
const TURN_OVER_S = -8; // our choice: when it is worth saying
const TURN_LATE_S = -14; // our choice: when it is worth saying
const FLARE_M = mFromFt(35); // our choice: a sentence before the 10 to 20 ft of FAA-H-8083-3C p. 9-8
const FLARE_S = 4; // estimate: to hear it, and to stop the sink
const FLARE_HIGH_M = mFromFt(90); // our choice: a glide's round-out
/** No turn to crosswind below the custom's height, but for so little. */
const ABOUT_M = mFromFt(50); // our choice: when it is worth saying
/** Where the nose comes down for level flight: a tenth of the rate of climb, some 70 ft (common practice). */
const LEVEL_OFF_M = mFromFt(70);
/** A circuit height within this is being flown level. */
const CLIMBING_MPS = 1; // our choice: when it is worth saying
const NO_TURN_M = mFromFt(300); // common practice: no turn below 300 ft but to final
const TURN_RANK = 18; // definition: a place in the order of what is said

const legWord = (c: CoachContext, topic: string, text: string, rank: number, afterS = 0): Word => ({
  topic: `${topic}-${c.m.legs.circuit}`,
  text,
  rank,
  talk: true,
  afterS,
});

const intoTurn = (c: CoachContext, onto: TurnOnto): string => {
  const leg: CircuitLeg = onto;
  const { plan } = c.lesson;
  const turn = `Turn ${handWords(c)} to ${onto} now`;
  // With part of the power, gently (ATSB AR-2010-055)
  const bank = c.s.powerPartial ? '15 degrees of bank' : bankWords(c, onto);
  const out = `roll out ${headingWords(c, leg)}`;
  if (onto === 'crosswind') return `${turn}: ${bank}, still climbing; ${out}.`;
  if (onto === 'final') return `${turn}: in balance, never beyond 30 degrees; ${out}, on the runway's line.`;
  if (onto === 'downwind') return `${turn}: ${bank}; ${out}.`;
  const down =
    plan.descentFrom === 'base-turn' ? `${descentWords(c, plan.legs.base, plan.legs.base.steady)}; ` : '';
  return `${turn}: ${bank}; ${down}${out}.`;
};

const turnWords = (c: CoachContext): Word[] => {
  const onto = turnAhead(c.m.legs.leg);
  const leftS = secondsToTurn(c);
  if (onto === null || leftS === null || isTheTowersTurn(c, onto)) return [];
  // Low, the climb comes first
  if (onto !== 'final' && c.s.wheelClearanceM < NO_TURN_M) return [];
  if (onto === 'crosswind' && c.s.heightM < c.lesson.plan.turns.crosswind.from.heightM - ABOUT_M) return [];
  if (leftS < TURN_NOW_S && leftS > TURN_OVER_S && !(onto === 'base' && isGlide(c)))
    return [legWord(c, `turn-${onto}`, intoTurn(c, onto), TURN_RANK)];
  if (leftS > TURN_LATE_S || isGlide(c)) return [];
  const text = `Past the turn: ${handWords(c)} to ${onto} now.`;
  return [{ topic: `late-${onto}`, text, rank: TURN_RANK, afterS: 0 }];
};

const levelWords = (c: CoachContext): Word[] => {
  const { lesson, s } = c;
  const { legs, heightM } = lesson.plan;
  const up: readonly LegName[] = ['upwind', 'turn-to-crosswind', 'crosswind', 'turn-to-downwind', 'downwind'];
  const there = s.heightM > heightM - LEVEL_OFF_M && s.verticalSpeedMps > CLIMBING_MPS;
  if (!up.includes(c.m.legs.leg) || !there) return [];
  const text = `Coming up to ${circuitAltitudeWords(c)}: nose to level, let ${knots(legs.downwind.iasMps)} come, then ${powerWords(c, legs.downwind.steady, 'downwind')}, and trim.`;
  return [legWord(c, 'level', text, TURN_RANK)];
};

/** Where the descent begins on downwind, abeam the threshold. */
const descentHere = (c: CoachContext): Word[] => {
  const { change } = c.lesson.plan.legs.downwind;
  if (change === null || change.verticalSpeedMps >= 0 || isGlide(c)) return [];
  if (c.m.legs.leg !== 'downwind' || isTheTowersTurn(c, 'base')) return [];
  // Already lower than the descent begins: nothing to lose
  if (c.s.heightM < change.at.heightM - ABOUT_M) return [];
  const leftS = secondsAlong(c, 'downwind', change.at);
  if (leftS === null || leftS > TURN_NOW_S || leftS < TURN_OVER_S) return [];
  const { downwind } = c.lesson.plan.legs;
  const text = `Abeam the threshold: ${descentWords(c, downwind, change.steady)}, ${sinkWords(change.verticalSpeedMps)}; trim.`;
  return [legWord(c, 'descent', text, TURN_RANK)];
};

/** A glide's own key: judged, not planned. */
const glideKey = (c: CoachContext): Word[] => {
  if (!isGlide(c) || c.m.legs.leg !== 'downwind' || c.lesson.where.alongM > 0) return [];
  const speed = knots(c.lesson.plan.legs.base.iasMps);
  const text = `Past abeam. At the key, the threshold near 45 degrees behind the wing, sooner in more wind: ${heatFirst(c)}throttle closed, ${speed}, and turn ${handWords(c)}.`;
  return [legWord(c, 'key', text, TURN_RANK)];
};

const flareWords = (c: CoachContext): Word[] => {
  // A fast sink is rounded out from higher up
  const fromM = Math.min(FLARE_HIGH_M, Math.max(FLARE_M, -FLARE_S * c.s.verticalSpeedMps));
  const low = c.lesson.where.clearM < fromM && c.s.verticalSpeedMps < 0;
  const { leg } = c.m.legs;
  const landing = leg === 'final' || leg === 'hold-off' || c.s.engineDead;
  return low && landing ? [legWord(c, 'flare', roundOut(c), 15)] : [];
};

/** What is to be done now and comes next, for somebody who is talked through it. */
export const talkNow = (c: CoachContext): Word[] => {
  const { m, lesson, s } = c;
  const { leg } = m.legs;
  const p = m.procedures;
  // What to do about it is the safety layer's (safety.ts); the landing is talked through as ever
  if (s.engineDead && !s.onGround) return flareWords(c);
  if (isAbandoned(c)) return [];
  const words = [...turnWords(c), ...levelWords(c), ...descentHere(c), ...glideKey(c)];
  const say = ON_LEG[leg];
  const check = p === null ? null : currentList(p);
  const first =
    leg === 'line-up' &&
    p !== null &&
    ((check !== null && !isComplete(check)) ||
      (lesson.procedures?.radio === 'towered' && !p.clearedToTakeOff));
  const quick = QUICK.has(leg);
  // Nobody is told to wait who still comes down
  if (leg === 'hold-off' && s.verticalSpeedMps < STILL_SINKING_MPS) return [...words, ...flareWords(c)];
  if (say !== undefined && !first)
    words.push(legWord(c, `leg-${leg}`, say(c), quick ? 16 : 47, quick ? 0.3 : 1.5));
  return [...words, ...flareWords(c)];
};
