import type { CallWords } from '../../simulation/procedures.ts';
import { drawFor } from '../exercises/draw.ts';
import type { Lesson } from '../lesson.ts';
import type { AnswerId, CallId } from './memory.ts';
import { CALL_SIGN, type Given, type Wordings, type Words } from './spoken.ts';
import { ANSWERS_FAA, CALLS_FAA } from './tower-faa.ts';
import { ANSWERS_ICAO, CALLS_ICAO } from './tower-icao.ts';

export type { Wordings } from './spoken.ts';

/**
 * What is said: who is called, who is calling, where, and what is intended; in CAP 413's and ICAO's words or in the
 * FAA's, by the choice of terms. With a tower: `tower-icao.ts`, `tower-faa.ts`. Without one the aerodrome's name comes
 * first, in the FAA's words also last (AIM 4-1-9), and nobody asks "any traffic please advise" (AIM).
 */
const given = ({ procedures, runway }: Lesson): Given => ({
  place: procedures?.place ?? '',
  runway: runway.designator,
  other: runway.otherDesignator,
  hand: runway.circuitSide === 1 ? 'right-hand ' : '',
  wrongHand: runway.circuitSide === 1 ? 'left-hand ' : 'right-hand ',
  left: runway.circuitSide === 1 ? 'right' : 'left',
  windFromDegM: procedures?.windFromDegM ?? 0,
  windKt: procedures?.windKt ?? 0,
});

/** First, and in the FAA's words also last. */
const traffic = (words: CallWords, place: string, text: string): string =>
  `${place} traffic, ${CALL_SIGN}, ${text}${words === 'faa' ? `, ${place}` : ''}`;

const untowered = (words: CallWords): Words => {
  const land = words === 'faa' ? 'full stop' : 'to land';
  const [enter, pattern] = words === 'faa' ? ['departing', 'pattern'] : ['entering', 'circuit'];
  const leg = (g: Given, name: string): string =>
    words === 'faa' ? `${g.left} ${name}` : `${g.hand}${name}`;
  const wrong = (g: Given, name: string): string =>
    words === 'faa' ? `${g.left === 'left' ? 'right' : 'left'} ${name}` : `${g.wrongHand}${name}`;
  return {
    ready: (g) => [
      traffic(words, g.place, `${enter} runway ${g.runway}, remaining in the ${pattern}`),
      traffic(words, g.place, `${enter} runway ${g.other}, remaining in the ${pattern}`),
      `${CALL_SIGN}, entering the runway, any traffic please advise`,
    ],
    downwind: (g) => [
      traffic(words, g.place, `${leg(g, 'downwind')} runway ${g.runway}, ${land}`),
      traffic(words, g.place, `${wrong(g, 'downwind')} runway ${g.runway}, ${land}`),
      traffic(words, g.place, `base runway ${g.runway}, ${land}`),
    ],
    base: (g) => [
      traffic(words, g.place, `${g.left} base runway ${g.runway}, ${land}`),
      traffic(words, g.place, `${g.left} base runway ${g.other}, ${land}`),
      traffic(words, g.place, `final runway ${g.runway}, ${land}`),
    ],
    final: (g) => [
      traffic(words, g.place, `final runway ${g.runway}, ${land}`),
      traffic(words, g.place, `long final runway ${g.runway}, ${land}`),
      traffic(words, g.place, `final runway ${g.other}, ${land}`),
    ],
    'going-around': (g) => [
      traffic(words, g.place, `going around, runway ${g.runway}`),
      traffic(words, g.place, `final runway ${g.runway}, ${land}`),
      `${CALL_SIGN}, going around, any traffic please advise`,
    ],
    vacated: (g) => [
      traffic(words, g.place, words === 'faa' ? `clear of runway ${g.runway}` : `runway ${g.runway} vacated`),
      traffic(words, g.place, `runway ${g.other} vacated`),
      traffic(words, g.place, `stopping on runway ${g.runway}`),
    ],
  };
};

const WITHOUT = { icao: untowered('icao'), faa: untowered('faa') } as const;
const WITH = { icao: CALLS_ICAO, faa: CALLS_FAA } as const;
const ANSWERS = { icao: ANSWERS_ICAO, faa: ANSWERS_FAA } as const;

const termsOf = ({ procedures }: Lesson): CallWords => procedures?.words ?? 'icao';

/** The call in its right wording and two that are plausible and wrong. */
export const callWordings = (call: CallId, lesson: Lesson): Wordings => {
  const calls = lesson.procedures?.radio === 'towered' ? WITH : WITHOUT;
  return calls[termsOf(lesson)][call](given(lesson));
};

export const answerSaid = (answer: AnswerId, lesson: Lesson): string =>
  ANSWERS[termsOf(lesson)][answer].said(given(lesson));

export const answerWordings = (answer: AnswerId, lesson: Lesson): Wordings | null =>
  ANSWERS[termsOf(lesson)][answer].back?.(given(lesson)) ?? null;

/**
 * What one does if the engine stops. On the run: closed, straight, brakes. Airborne: nose down first, a field ahead,
 * within 30 degrees, no turn back low (New Zealand Flight Instructor Guide; within 30 degrees as syllabus texts quote).
 */
export const IF_IT_STOPS: Wordings = [
  'On the run: throttle closed, straight, brakes. In the air: nose down, glide, a field ahead within 30 degrees',
  'On the run: throttle closed, brakes. In the air: turn back to the runway at once',
  'On the run: lift off if fast enough. In the air: look for the fault, then for a field',
];

/** In which order three wordings stand to be chosen from: the same for the same flight and place. */
export const shuffled = (lesson: Lesson, id: string): readonly [number, number, number] => {
  const ORDERS = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ] as const;
  return drawFor(lesson.procedures?.seed ?? 0, 'wordings').pick(id, ORDERS);
};
