import type { COACH_WORDS } from '../attempts/attempt.ts';
import type { CoachContext, Word } from './context.ts';
import { deviationsNow } from './deviations.ts';
import { remindersNow, type Told } from './reminders.ts';
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
}

export const beginCoach = (): CoachMemory => ({
  stands: {},
  said: {},
  times: {},
  lastS: Number.NEGATIVE_INFINITY,
  topic: '',
  text: '',
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

const goAroundNow = ({ m, s }: CoachContext): Word[] => {
  const due = m.dues.find((d) => !d.answered && !d.ignored && d.circuit === m.legs.circuit);
  if (due === undefined || m.legs.leg === 'go-around' || s.onGround) return [];
  return [{ topic: 'go-around', text: `Go around: ${due.why}.`, rank: 1, afterS: 0.5 }];
};

/** With a turn so near, what can wait does, so that the turn is not talked over. */
const TURN_NEAR_S = 5; // our choice: so that words do not crowd
const CAN_WAIT_RANK = 50; // definition: a place in the order of what is said

const isTurnNear = (c: CoachContext): boolean => {
  const leftS = secondsToTurn(c);
  return leftS !== null && leftS > 0 && leftS < TURN_NEAR_S;
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
  const words = [...goAroundNow(c), ...deviationsNow(c), ...remindersNow(c, level, told), ...talked];
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
    return null;
  }
  const words = wordsNow(c, level, (topic) => memory.times[topic] ?? 0, talk);
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
