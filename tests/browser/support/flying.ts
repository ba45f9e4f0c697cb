import type { Page } from 'playwright-core';
import type { Meters } from './cockpit.ts';

/**
 * A program that flies by reading the meters and striking keys, at Curlew Sands, runway 22, left-hand, with the
 * trainer. 3 degrees are 318 ft in a nautical mile; aim point 300 m in; elevation 20 ft.
 */
const PLACE = { slopeFtPerNmi: 318.4, aimNmi: 300 / 1852, elevationFt: 20, headingDegM: 220 } as const;
/** What the trainer needs on that slope (model.md: final 65 kt on 3 degrees, 1,760 rpm with flap 20). */
const FINAL = { kt: 65, rpm: 1790, pitchDeg: -0.5 } as const;

/** Between two looks at the meters, and how long a key is struck: nobody's eyes and fingers are faster. */
export const LOOK_MS = 250;
const STROKE_MS = 90;
/** Long enough to brake, short enough to let go in between. */
const BRAKE_MS = 180;

export interface Sight {
  readonly meters: Meters;
  readonly leg: string;
}

/** Keys to strike now, and for how long. */
export interface Stroke {
  readonly keys: string[];
  readonly ms: number;
}

const within = (x: number, most: number): number => Math.max(-most, Math.min(most, x));

/** A key to strike when a value is off by more than a little either way. */
const correct = (keys: string[], off: number, little: number, whenHigh: string, whenLow: string): void => {
  if (off > little) keys.push(whenHigh);
  if (off < -little) keys.push(whenLow);
};

const heightFt = (meters: Meters): number => meters('Altitude') - PLACE.elevationFt;

/** Which way and how far to turn, -180 to 180. */
const turnTo = (meters: Meters, toDeg: number): number => ((toDeg - meters('Track') + 540) % 360) - 180;

const bankTowards = (meters: Meters, toDeg: number, most: number): number =>
  within(1.1 * turnTo(meters, toDeg), most);

/** Towards the centreline, the straighter the nearer. */
const finalTrack = (meters: Meters): number =>
  PLACE.headingDegM - within(0.1 * meters('Offset'), 14) - within(0.2 * meters('Offset'), 3);

/** Down the slope: power for the path, a little pitch for the speed, bank for the centreline. */
const onFinal = ({ meters }: Sight): string[] => {
  const keys: string[] = [];
  const lowFt = (meters('Distance') + PLACE.aimNmi) * PLACE.slopeFtPerNmi - heightFt(meters);
  const sinkingFast = -340 - meters('Vertical speed');
  const rpm = FINAL.rpm + Math.max(-350, Math.min(400, 5 * lowFt + 0.6 * sinkingFast));
  correct(keys, meters('Power') - rpm, 60, 's', 'w');
  const pitch = FINAL.pitchDeg + within(0.3 * (meters('Airspeed') - FINAL.kt), 2.5);
  correct(keys, meters('Pitch') - pitch, 0.4, 'ArrowUp', 'ArrowDown');
  correct(keys, meters('Bank') - bankTowards(meters, finalTrack(meters), 14), 1, 'ArrowLeft', 'ArrowRight');
  return keys;
};

/** Power off, wings level, and the nose slowly up to hold it off. */
const holdingOff = ({ meters }: Sight): string[] => {
  const keys = ['s'];
  if (meters('Pitch') < 7) keys.push('ArrowDown');
  correct(keys, meters('Bank'), 1.5, 'ArrowLeft', 'ArrowRight');
  return keys;
};

/** Straight with the feet, brakes in short strokes. */
const onTheGround = ({ meters }: Sight): string[] => {
  const keys = ['s', 'b'];
  const off = meters('Heading') - PLACE.headingDegM + 1.2 * meters('Offset');
  correct(keys, off, 1.5, 'ArrowLeft', 'ArrowRight');
  return keys;
};

export const landingKeys = (sight: Sight): Stroke => {
  if (/roll|stopped/i.test(sight.leg)) return { keys: onTheGround(sight), ms: BRAKE_MS };
  if (heightFt(sight.meters) < 22) return { keys: holdingOff(sight), ms: LOOK_MS };
  return { keys: onFinal(sight), ms: STROKE_MS };
};

interface Goal {
  readonly trackDeg: number;
  readonly heightFt: number;
  readonly kt: number;
  readonly rpm: number;
  readonly sinkFpm: number;
}

/** Towards a track, a height and a speed: bank, power for the height, pitch for the speed. */
const towards = ({ meters }: Sight, goal: Goal): string[] => {
  const keys: string[] = [];
  correct(keys, meters('Bank') - bankTowards(meters, goal.trackDeg, 25), 2, 'ArrowLeft', 'ArrowRight');
  const lowFt = goal.heightFt - heightFt(meters);
  const rpm = goal.rpm + within(3 * lowFt - 0.35 * (meters('Vertical speed') + goal.sinkFpm), 450);
  correct(keys, meters('Power') - rpm, 60, 's', 'w');
  const level = goal.sinkFpm === 0 ? 0.8 : -0.5;
  const pitch = level + within(0.25 * (meters('Airspeed') - goal.kt), 3);
  correct(keys, meters('Pitch') - pitch, 0.4, 'ArrowUp', 'ArrowDown');
  return keys;
};

/** Nautical miles from the centreline out to the downwind track, and past the threshold to the base turn. */
const BASE_AT_NMI = 0.98;
const LEAD_M = 430;

/** From downwind round to final: level to abeam, down to 680 ft at the base turn and to 380 ft before final. */
export const circuitKeys = (sight: Sight): Stroke => {
  const { meters, leg } = sight;
  const before = meters('Distance');
  const outM = Math.abs(meters('Offset'));
  if (/downwind/i.test(leg) && before < BASE_AT_NMI) {
    const share = Math.max(0, before / BASE_AT_NMI);
    const heightGoal = 1000 - 300 * share;
    const sinkFpm = before > 0 ? 360 : 0;
    const goal = { trackDeg: 40, heightFt: heightGoal, kt: 78, rpm: before > 0 ? 1850 : 2200, sinkFpm };
    return { keys: towards(sight, goal), ms: STROKE_MS };
  }
  const straight = /final|hold|roll|stopped/i.test(leg) && !/turn/i.test(leg);
  if (straight && Math.abs(turnTo(meters, PLACE.headingDegM)) < 40) return landingKeys(sight);
  if (outM > LEAD_M && !/final/i.test(leg)) {
    const goal = { trackDeg: 310, heightFt: 370 + 310 * (outM / 1852), kt: 70, rpm: 1750, sinkFpm: 420 };
    return { keys: towards(sight, goal), ms: STROKE_MS };
  }
  const slopeFt = (before + PLACE.aimNmi) * PLACE.slopeFtPerNmi;
  const goal = { trackDeg: finalTrack(meters), heightFt: slopeFt, kt: 67, rpm: 1790, sinkFpm: 360 };
  return { keys: towards(sight, goal), ms: STROKE_MS };
};

/** Strikes keys and lets the time of one look pass. */
export const strike = async (page: Page, { keys, ms }: Stroke): Promise<void> => {
  for (const key of keys) await page.keyboard.down(key);
  await page.clock.runFor(ms);
  for (const key of keys) await page.keyboard.up(key);
  if (ms < LOOK_MS) await page.clock.runFor(LOOK_MS - ms);
};
