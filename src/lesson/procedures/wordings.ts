import { fixed, headingDigits } from '../../units/format.ts';
import { drawFor } from '../exercises/draw.ts';
import type { Lesson } from '../lesson.ts';
import type { AnswerId, CallId } from './memory.ts';

/**
 * What is said: who is called, who is calling, where, and what is intended. Position calls and the answers: CAP 413
 * and ICAO phraseology as flying-school handbooks quote it; without a tower the aerodrome's name comes first, in
 * the FAA's words also last (AIM 4-1-9), and nobody asks "any traffic please advise" (AIM). Cleared to enter, land
 * on or take off from a runway is read back with the runway; wind is not (ICAO Doc 4444). "Take-off" is said only
 * in the clearance. The call sign is our own.
 */
const CALL_SIGN = 'Lapwing 21';

/** Three wordings; the first is the right one. */
export type Wordings = readonly [string, string, string];

interface Given {
  readonly place: string;
  readonly runway: string;
  readonly other: string;
  /** Said only where circuits are to the right (CAP 413). */
  readonly hand: string;
  readonly wrongHand: string;
  readonly left: 'left' | 'right';
  readonly wind: string;
  readonly faa: boolean;
}

const given = ({ procedures, runway }: Lesson): Given => ({
  faa: procedures?.words === 'faa',
  place: procedures?.place ?? '',
  runway: runway.designator,
  other: runway.otherDesignator,
  hand: runway.circuitSide === 1 ? 'right-hand ' : '',
  wrongHand: runway.circuitSide === 1 ? 'left-hand ' : 'right-hand ',
  left: runway.circuitSide === 1 ? 'right' : 'left',
  wind: `${headingDigits(procedures?.windFromDegM ?? 0)} degrees ${fixed(procedures?.windKt ?? 0)} knots`,
});

type Words = Readonly<Record<CallId, (g: Given) => Wordings>>;

const TOWERED: Words = {
  ready: ({ runway, other, place, faa }) => [
    `${place} Tower, ${CALL_SIGN}, ready for departure, runway ${runway}`,
    // "Take-off" is the tower's word where ICAO's are used; in the FAA's it may be the pilot's too
    faa
      ? `${place} Tower, ${CALL_SIGN}, ready for departure, runway ${other}`
      : `${place} Tower, ${CALL_SIGN}, ready for take-off, runway ${runway}`,
    `${place} Tower, ${CALL_SIGN}, lining up and rolling`,
  ],
  downwind: ({ hand, wrongHand }) => [
    `${CALL_SIGN}, ${hand}downwind, to land`,
    `${CALL_SIGN}, ${wrongHand}downwind, to land`,
    `${CALL_SIGN}, base, to land`,
  ],
  base: ({ left }) => [`${CALL_SIGN}, ${left} base`, `${CALL_SIGN}, final`, `${CALL_SIGN}, downwind`],
  final: () => [`${CALL_SIGN}, final`, `${CALL_SIGN}, long final`, `${CALL_SIGN}, final, landing`],
  'going-around': () => [
    `${CALL_SIGN}, going around`,
    `${CALL_SIGN}, request go-around`,
    `${CALL_SIGN}, final, touch-and-go`,
  ],
  vacated: ({ runway }) => [
    `${CALL_SIGN}, runway vacated`,
    `${CALL_SIGN}, landed runway ${runway}, stopping`,
    `${CALL_SIGN}, taxiing to the apron`,
  ],
};

/** First, and in the FAA's words also last. */
const traffic = (words: 'icao' | 'faa', place: string, text: string): string =>
  `${place} traffic, ${CALL_SIGN}, ${text}${words === 'faa' ? `, ${place}` : ''}`;

const untowered = (words: 'icao' | 'faa'): Words => {
  const land = words === 'faa' ? 'full stop' : 'to land';
  const leg = (g: Given, name: string): string =>
    words === 'faa' ? `${g.left} ${name}` : `${g.hand}${name}`;
  const wrong = (g: Given, name: string): string =>
    words === 'faa' ? `${g.left === 'left' ? 'right' : 'left'} ${name}` : `${g.wrongHand}${name}`;
  return {
    ready: (g) => [
      traffic(words, g.place, `entering runway ${g.runway}, remaining in the circuit`),
      traffic(words, g.place, `entering runway ${g.other}, remaining in the circuit`),
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

const WORDS = { icao: untowered('icao'), faa: untowered('faa') } as const;

/** The call in its right wording and two that are plausible and wrong. */
export const callWordings = (call: CallId, lesson: Lesson): Wordings => {
  const { procedures } = lesson;
  const words = procedures?.radio === 'towered' ? TOWERED : WORDS[procedures?.words ?? 'icao'];
  return words[call](given(lesson));
};

interface Answer {
  /** What the tower says. */
  readonly said: (g: Given) => string;
  /** What may be said back; null: nothing is. */
  readonly back: ((g: Given) => Wordings) | null;
}

const ANSWERS: Readonly<Record<AnswerId, Answer>> = {
  'cleared-take-off': {
    said: ({ runway, wind }) => `${CALL_SIGN}, runway ${runway}, cleared for take-off, surface wind ${wind}.`,
    back: ({ runway, wind }) => [
      `Runway ${runway}, cleared for take-off, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
      `Wind ${wind}, ${CALL_SIGN}`,
    ],
  },
  'report-final': {
    said: () => `${CALL_SIGN}, number one, report final.`,
    back: ({ runway }) => [
      `Number one, report final, ${CALL_SIGN}`,
      `Cleared to land, ${CALL_SIGN}`,
      `Runway ${runway}, ${CALL_SIGN}`,
    ],
  },
  follow: {
    said: () => `${CALL_SIGN}, number two, follow the aeroplane ahead, report final.`,
    back: () => [
      `Number two, report final, ${CALL_SIGN}`,
      `Number one, report final, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
    ],
  },
  'number-two': {
    said: () => `${CALL_SIGN}, number two, extend downwind behind the one ahead.`,
    back: () => [
      `Number two, extending downwind, ${CALL_SIGN}`,
      `Number two, turning base, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
    ],
  },
  extend: {
    said: () => `${CALL_SIGN}, extend downwind; base will be called.`,
    back: () => [
      `Extending downwind, ${CALL_SIGN}`,
      `Turning base, ${CALL_SIGN}`,
      `Long final, ${CALL_SIGN}`,
    ],
  },
  orbit: {
    said: ({ left }) => `${CALL_SIGN}, orbit ${left === 'left' ? 'right' : 'left'}, report back on downwind.`,
    back: ({ left }) => [
      `Orbit ${left === 'left' ? 'right' : 'left'}, ${CALL_SIGN}`,
      `Orbit ${left}, ${CALL_SIGN}`,
      `Extending downwind, ${CALL_SIGN}`,
    ],
  },
  continue: {
    said: () => `${CALL_SIGN}, continue approach, one on the runway.`,
    back: () => [
      `Continue approach, ${CALL_SIGN}`,
      `Cleared to land, ${CALL_SIGN}`,
      `Going around, ${CALL_SIGN}`,
    ],
  },
  'cleared-land': {
    said: ({ runway, wind }) => `${CALL_SIGN}, runway ${runway}, cleared to land, surface wind ${wind}.`,
    back: ({ runway, other }) => [
      `Runway ${runway}, cleared to land, ${CALL_SIGN}`,
      `Roger, landing, ${CALL_SIGN}`,
      `Runway ${other}, cleared to land, ${CALL_SIGN}`,
    ],
  },
  'go-around': {
    said: () => `${CALL_SIGN}, go around, I say again, go around.`,
    back: () => [
      `Going around, ${CALL_SIGN}`,
      `Say again, ${CALL_SIGN}`,
      `Continuing, runway in sight, ${CALL_SIGN}`,
    ],
  },
  'green-light': { said: () => 'The tower shows a steady green light: cleared to land.', back: null },
};

export const answerSaid = (answer: AnswerId, lesson: Lesson): string => ANSWERS[answer].said(given(lesson));

export const answerWordings = (answer: AnswerId, lesson: Lesson): Wordings | null =>
  ANSWERS[answer].back?.(given(lesson)) ?? null;

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
