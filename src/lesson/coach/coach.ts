import { CIRCUIT_LEGS } from '../../circuit/types.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import type { COACH_WORDS } from '../attempts/attempt.ts';
import { FULL_POWER } from '../watch/full-power.ts';
import { asksOf } from './asks.ts';
import type { CoachContext, Word } from './context.ts';
import { deviationsNow } from './deviations.ts';
import { remindersNow, type Told } from './reminders.ts';
import { beginDangers, type DangerMemory, stallMargin, watchDangers } from './safety.ts';
import { canBeGiven, troubleNow } from './trouble.ts';
import { secondsToTurn } from './turns-ahead.ts';

/**
 * The coach: one thing at a time, from the same rules as the assessment, and silence while it goes well. It looks
 * four times a second; its memory is plain data.
 */
export type CoachLevel = (typeof COACH_WORDS)[number];

export interface CoachMemory {
  /** Since when each topic has stood. */
  stands: Record<string, number>;
  /** When each was last said, and how often. */
  said: Record<string, number>;
  times: Record<string, number>;
  lastS: number;
  topic: string;
  text: string;
  /** The safety layer's own memory, and whether it has the word now. */
  danger: DangerMemory;
  /** The circuit in which a go-around was asked for, until it is under way or over; null: none was. */
  aroundCircuit: number | null;
  layer: 'safety' | 'lesson';
}

export const beginCoach = (): CoachMemory => ({
  stands: {},
  said: {},
  times: {},
  lastS: Number.NEGATIVE_INFINITY,
  topic: '',
  text: '',
  danger: beginDangers(),
  aroundCircuit: null,
  layer: 'lesson',
});

/** Something urgent waits so long after other words; the rest until those have been heard out. */
const URGENT_GAP_S = 2.5; // our choice: so that words do not crowd
/** Speech: some fifteen letters a second, and a breath after it (common practice). */
const LETTERS_PER_S = 15;
const BREATH_S = 1.5; // common practice, as above
const SHORTEST_GAP_S = 4; // our choice: so that words do not crowd
/** Nobody talks over the tower. */
const TOWER_S = 5; // our choice: so that words do not crowd
const URGENT_RANK = 20; // definition: a place in the order of what is said
const AGAIN_S = 18; // our choice: so that words do not crowd
/** Words stay to be read for so long. */
const READ_S = 7; // our choice: so that words do not crowd

/** With a turn so near, what can wait does, so that the turn is not talked over. */
const TURN_NEAR_S = 5; // our choice: so that words do not crowd
const CAN_WAIT_RANK = 50; // definition: a place in the order of what is said

const isTurnNear = (c: CoachContext): boolean => {
  const leftS = secondsToTurn(c);
  return leftS !== null && leftS > 0 && leftS < TURN_NEAR_S;
};

/** Speed over stalling speed below which nobody is asked for the nose up or for less power. */
const SLOW = 1.3; // FAA-H-8083-3C ch. 9: 1.3 Vs0 is the approach
/** So much below the speed of the leg it is slow too. */
const BELOW_PLAN_MPS = mpsFromKt(3); // our choice: inside the 5 kt of FAA-S-ACS-6 IV.B
const FAR_BELOW_PLAN_MPS = mpsFromKt(8); // our choice: inside the 10 kt of FAA-S-ACS-6
/** With the nose so high nobody is asked for less power. */
const NOSE_HIGH_RAD = radFromDeg(4); // our choice: above any approach with flap

const isSlow = ({ m, s, lesson }: CoachContext): boolean => {
  const { leg } = m.legs;
  const onApproach = leg === 'final' || leg === 'base' || leg === 'turn-to-final';
  const flown = CIRCUIT_LEGS.find((each) => leg === each || leg === `turn-to-${each}`);
  if (flown === undefined) return stallMargin(s) < SLOW;
  const planMps = lesson.plan.legs[flown].iasMps;
  return stallMargin(s) < SLOW || s.iasMps < planMps - (onApproach ? BELOW_PLAN_MPS : FAR_BELOW_PLAN_MPS);
};
/** Lower than this over the ground, outside the round-out, nobody is asked to push or to take power off. */
const LOW_M = mFromFt(200); // common practice: the last call
/** Below it the approach and the landing are all there is: no calls, checks, trim. */
const ONLY_FLYING_RANK = 26; // our choice: speed and lights of final and what is more urgent

/** What could hurt at this moment is not said, however right it is at another. */
export const maySay = (
  { text, rank, topic }: Pick<Word, 'text' | 'rank' | 'topic'>,
  c: CoachContext,
): boolean => {
  const { m, s } = c;
  if (s.onGround) return true;
  const landing = m.legs.leg === 'final' || m.legs.leg === 'hold-off';
  if (landing && s.wheelClearanceM < LOW_M && rank > ONLY_FLYING_RANK) return false;
  // The words of round-out and hold-off belong to the landing itself
  if (topic.startsWith('flare') || topic.startsWith('leg-hold-off')) return true;
  const asks = asksOf(text);
  if (isSlow(c) && (asks.includes('nose-up') || asks.includes('less-power'))) return false;
  if (s.pitchRad > NOSE_HIGH_RAD && asks.includes('less-power')) return false;
  const climbsAway = m.legs.leg === 'upwind' && s.verticalSpeedMps > 0;
  const low = s.wheelClearanceM < LOW_M && !climbsAway;
  return !low || !(asks.includes('nose-down') || asks.includes('less-power'));
};

/** What talks somebody through a circuit (`talk.ts`), handed in. */
export type Talk = (c: CoachContext) => Word[];

const wordsNow = (
  c: CoachContext,
  level: 'reminded' | 'talked-through',
  told: Told,
  talk: Talk | null,
): Word[] => {
  const talked = level === 'talked-through' && talk !== null ? talk(c) : [];
  // Without an engine there is a field, and nothing else
  if (c.s.engineDead && !c.s.onGround) return talked;
  const words = [
    ...troubleNow(c, told),
    ...deviationsNow(c).filter((word) => canBeGiven(word, c)),
    ...remindersNow(c, level, told),
    ...talked,
  ].filter((word) => maySay(word, c));
  return isTurnNear(c) ? words.filter(({ rank }) => rank < CAN_WAIT_RANK) : words;
};

const heardOutS = (text: string): number => Math.max(SHORTEST_GAP_S, text.length / LETTERS_PER_S + BREATH_S);

/** What a talked-through pupil hears once, another circuit apart. */
const mayBeSaid = (memory: CoachMemory, word: Word, nowS: number, towerS: number): boolean => {
  if (word.rank > URGENT_RANK && nowS - towerS < TOWER_S) return false;
  const before = memory.said[word.topic];
  if (before !== undefined && (word.talk === true || nowS - before < AGAIN_S)) return false;
  if (nowS - (memory.stands[word.topic] ?? nowS) < word.afterS) return false;
  return nowS - memory.lastS >= (word.rank <= URGENT_RANK ? URGENT_GAP_S : heardOutS(memory.text));
};

/** So near to circuit height a go-around is over, whatever leg it is on. */
const ROUND_AGAIN_M = mFromFt(150); // our choice: the climb is all but done

/** Asked for and not yet recognised as one: nothing of the approach is said any more, only what a go-around is. */
const isGoingAround = (memory: CoachMemory, { m, s, lesson }: CoachContext): boolean => {
  if (memory.aroundCircuit === null) return false;
  const { leg, circuit } = m.legs;
  const under = leg === 'go-around' || leg === 'upwind' || circuit !== memory.aroundCircuit;
  // Cured in another way, and landed from: it was not to be
  const givenUp = s.throttle < FULL_POWER;
  if (under || givenUp || s.onGround || s.heightM > lesson.plan.heightM - ROUND_AGAIN_M)
    memory.aroundCircuit = null;
  return memory.aroundCircuit !== null;
};

const aroundWord = ({ lesson, m, s }: CoachContext): Word => {
  const flap = s.flapStage > 0 ? '; sink stopped, flap up by stages' : '';
  return {
    topic: `around-${m.legs.circuit}`,
    text: `Going around: full power, wings level, climbing attitude, ${lesson.aeroplane.speeds.goAroundKt} knots${flap}.`,
    rank: URGENT_RANK,
    afterS: 0,
  };
};

/** One look; the sentence to say now, or null. What was said last stays in `memory.text` while it holds. */
export const coach = (
  memory: CoachMemory,
  c: CoachContext,
  level: CoachLevel,
  talk: Talk | null,
): string | null => {
  const nowS = c.s.timeS;
  if (level === 'silent' || c.m.ended !== null) {
    memory.text = '';
    memory.topic = '';
    memory.layer = 'lesson';
    return null;
  }
  const danger = watchDangers(memory.danger, c);
  memory.layer = danger.stands || danger.say !== null ? 'safety' : 'lesson';
  if (danger.stands || danger.say !== null) {
    // What stood before it begins to stand anew once it is over
    memory.stands = {};
    memory.topic = 'safety';
    if (danger.say === null) return null;
    memory.lastS = nowS;
    memory.text = danger.say;
    if (danger.stands && /go around/i.test(danger.say)) memory.aroundCircuit = c.m.legs.circuit;
    return danger.say;
  }
  // A danger that has begun and not yet lasted: nobody begins another sentence
  if (Object.keys(memory.danger.since).length > 0) return null;
  const words = isGoingAround(memory, c)
    ? [aroundWord(c)]
    : wordsNow(c, level, (topic) => memory.times[topic] ?? 0, talk);
  const stands: Record<string, number> = {};
  for (const { topic } of words) stands[topic] = memory.stands[topic] ?? nowS;
  memory.stands = stands;
  const holds = words.some(({ topic }) => topic === memory.topic);
  if (memory.text !== '' && !holds && nowS - memory.lastS > READ_S) memory.text = '';
  const heard = c.m.procedures?.answers ?? [];
  const towerS = heard[heard.length - 1]?.heardS ?? Number.NEGATIVE_INFINITY;
  const next = words
    .filter((word) => mayBeSaid(memory, word, nowS, towerS))
    .reduce<Word | null>((best, word) => (best === null || word.rank < best.rank ? word : best), null);
  if (next === null) return null;
  memory.said[next.topic] = nowS;
  memory.times[next.topic] = (memory.times[next.topic] ?? 0) + 1;
  memory.lastS = nowS;
  memory.topic = next.topic;
  memory.text = next.text;
  return next.text;
};
