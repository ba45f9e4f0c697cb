import { fixed, headingDigits } from '../../units/format.ts';
import { type Answers, CALL_SIGN, type Given, LIGHTS, type Words } from './spoken.ts';

/**
 * With a tower, in the FAA's words. Take-off and landing: the runway, then the clearance (FAA JO 7110.65, 3-9-10 and
 * 3-10-5); "continue, traffic ..." (3-10-5); sequence, "make right three-sixty" (3-8-1, quoted); "ready for departure"
 * (FAA AIM 4-3-10, from memory); "clear of runway" (AIM 4-1-9); closed traffic: Pilot/Controller Glossary. The hand of
 * the circuit is always said. A runway's clearance is read back with the runway (AIM 4-3-18, from memory).
 */
export const CALLS_FAA: Words = {
  ready: ({ runway, other, place, left }) => [
    `${place} Tower, ${CALL_SIGN}, runway ${runway}, ready for departure, ${left} closed traffic`,
    `${place} Tower, ${CALL_SIGN}, runway ${other}, ready for departure, ${left} closed traffic`,
    `${place} Tower, ${CALL_SIGN}, taking the runway, any traffic please advise`,
  ],
  downwind: ({ runway, left }) => [
    `${CALL_SIGN}, ${left} downwind, runway ${runway}, full stop`,
    `${CALL_SIGN}, ${opposite(left)} downwind, runway ${runway}, full stop`,
    `${CALL_SIGN}, ${left} base, runway ${runway}, full stop`,
  ],
  base: ({ runway, left }) => [
    `${CALL_SIGN}, ${left} base, runway ${runway}`,
    `${CALL_SIGN}, final, runway ${runway}`,
    `${CALL_SIGN}, ${left} downwind, runway ${runway}`,
  ],
  final: ({ runway, other, left }) => [
    `${CALL_SIGN}, final, runway ${runway}`,
    `${CALL_SIGN}, final, runway ${other}`,
    `${CALL_SIGN}, ${left} base, runway ${runway}`,
  ],
  'going-around': ({ runway }) => [
    `${CALL_SIGN}, going around`,
    `${CALL_SIGN}, request go-around`,
    `${CALL_SIGN}, final, runway ${runway}, touch and go`,
  ],
  vacated: ({ runway }) => [
    `${CALL_SIGN}, clear of runway ${runway}`,
    `${CALL_SIGN}, down on runway ${runway}, stopping`,
    `${CALL_SIGN}, taxiing to the ramp`,
  ],
};

const opposite = (hand: 'left' | 'right'): 'left' | 'right' => (hand === 'left' ? 'right' : 'left');

const CALM_KT = 3; // FAA JO 7110.65, 2-6-5 (from memory): calm below it
const windIn = ({ windFromDegM, windKt }: Pick<Given, 'windFromDegM' | 'windKt'>): string =>
  windKt < CALM_KT ? 'calm' : `${headingDigits(windFromDegM)} at ${fixed(windKt)}`;

export const ANSWERS_FAA: Answers = {
  'cleared-take-off': {
    said: ({ runway, ...g }) => `${CALL_SIGN}, wind ${windIn(g)}, runway ${runway}, cleared for takeoff.`,
    back: ({ runway, ...g }) => [
      `Runway ${runway}, cleared for takeoff, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
      `Wind ${windIn(g)}, ${CALL_SIGN}`,
    ],
  },
  'report-final': {
    said: ({ runway }) => `${CALL_SIGN}, number one, runway ${runway}, report final.`,
    back: ({ runway }) => [
      `Number one, report final, ${CALL_SIGN}`,
      `Runway ${runway}, cleared to land, ${CALL_SIGN}`,
      `Runway ${runway}, ${CALL_SIGN}`,
    ],
  },
  follow: {
    said: () => `${CALL_SIGN}, number two, follow the traffic ahead, report final.`,
    back: () => [
      `Number two, follow the traffic, report final, ${CALL_SIGN}`,
      `Number one, report final, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
    ],
  },
  'number-two': {
    said: () => `${CALL_SIGN}, number two, extend downwind, follow the traffic ahead.`,
    back: () => [
      `Number two, extend downwind, follow the traffic, ${CALL_SIGN}`,
      `Number two, turning base, ${CALL_SIGN}`,
      `Roger, ${CALL_SIGN}`,
    ],
  },
  extend: {
    said: () => `${CALL_SIGN}, extend downwind, I'll call your base.`,
    back: () => [
      `Extend downwind, you'll call my base, ${CALL_SIGN}`,
      `Turning base, ${CALL_SIGN}`,
      `Long final, ${CALL_SIGN}`,
    ],
  },
  orbit: {
    said: ({ left }) => `${CALL_SIGN}, make ${opposite(left)} three-sixty, report back on downwind.`,
    back: ({ left }) => [
      `${capital(opposite(left))} three-sixty, ${CALL_SIGN}`,
      `${capital(left)} three-sixty, ${CALL_SIGN}`,
      `Extend downwind, ${CALL_SIGN}`,
    ],
  },
  continue: {
    said: ({ runway }) => `${CALL_SIGN}, runway ${runway}, continue, traffic on the runway.`,
    back: ({ runway }) => [
      `Runway ${runway}, continue, ${CALL_SIGN}`,
      `Runway ${runway}, cleared to land, ${CALL_SIGN}`,
      `Going around, ${CALL_SIGN}`,
    ],
  },
  'cleared-land': {
    said: ({ runway, ...g }) => `${CALL_SIGN}, wind ${windIn(g)}, runway ${runway}, cleared to land.`,
    back: ({ runway, other }) => [
      `Runway ${runway}, cleared to land, ${CALL_SIGN}`,
      `Roger, landing, ${CALL_SIGN}`,
      `Runway ${other}, cleared to land, ${CALL_SIGN}`,
    ],
  },
  'go-around': {
    said: () => `${CALL_SIGN}, go around.`,
    back: () => [
      `Going around, ${CALL_SIGN}`,
      `Say again, ${CALL_SIGN}`,
      `Continuing, runway in sight, ${CALL_SIGN}`,
    ],
  },
  ...LIGHTS,
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
