import { fixed, headingDigits } from '../../units/format.ts';
import { type Answers, CALL_SIGN, type Given, LIGHTS, type Words } from './spoken.ts';

/**
 * With a tower, in the words of CAP 413 and ICAO as flying-school handbooks quote them. Cleared to enter, land on or
 * take off from a runway is read back with the runway; wind is not (ICAO Doc 4444). "Take-off" is said only in the
 * clearance.
 */
export const CALLS_ICAO: Words = {
  ready: ({ runway, place }) => [
    `${place} Tower, ${CALL_SIGN}, ready for departure, runway ${runway}`,
    // "Take-off" is the tower's word
    `${place} Tower, ${CALL_SIGN}, ready for take-off, runway ${runway}`,
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

const windIn = ({ windFromDegM, windKt }: Pick<Given, 'windFromDegM' | 'windKt'>): string =>
  `${headingDigits(windFromDegM)} degrees ${fixed(windKt)} knots`;

export const ANSWERS_ICAO: Answers = {
  'cleared-take-off': {
    said: ({ runway, ...g }) =>
      `${CALL_SIGN}, runway ${runway}, cleared for take-off, surface wind ${windIn(g)}.`,
    back: ({ runway, ...g }) => [
      `Runway ${runway}, cleared for take-off, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
      `Wind ${windIn(g)}, ${CALL_SIGN}`,
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
    said: ({ runway, ...g }) => `${CALL_SIGN}, runway ${runway}, cleared to land, surface wind ${windIn(g)}.`,
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
  ...LIGHTS,
};
