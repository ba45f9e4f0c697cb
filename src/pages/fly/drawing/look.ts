import type { Emergency } from '../../../flight/emergency.ts';
import { radFromDeg } from '../../../units/conversions.ts';

/** Where the pilot looks: a direction relative to the nose, or where the leg asks. */
export type Look = 'leg' | -135 | -90 | -45 | 0 | 45 | 90 | 135;

const DIRECTIONS = [-135, -90, -45, 0, 45, 90, 135] as const;

const nearestTo = (nowDeg: number): (typeof DIRECTIONS)[number] =>
  DIRECTIONS.reduce((best, deg) => (Math.abs(deg - nowDeg) < Math.abs(best - nowDeg) ? deg : best));

/** The look that goes that way. */
export const lookAt = (deg: number): Look => nearestTo(deg);

/** One step further to a side from where the look is now. */
export const lookFurther = (nowDeg: number, by: 1 | -1): Look => {
  const at = DIRECTIONS.indexOf(nearestTo(nowDeg)) + by;
  return DIRECTIONS[Math.min(DIRECTIONS.length - 1, Math.max(0, at))] as Look;
};

/**
 * Where a pilot looks on each leg, as degrees towards the runway side (common practice): ahead; at the runway on
 * downwind and over the shoulder once it lies behind the wing; into the turn while turning.
 */
const BY_LEG: Readonly<Record<string, number>> = {
  'turn-to-crosswind': 45,
  'turn-to-downwind': 45,
  downwind: 90,
  'turn-to-base': 90,
  base: 45,
  'turn-to-final': 45,
};

/** `side` is +1 for right-hand circuits; `behindWingRad` is how far behind the wing the threshold lies. */
export const lookForLeg = (leg: string, side: 1 | -1, behindWingRad: number): number => {
  if (leg === 'downwind' && behindWingRad > radFromDeg(20)) return side * 135;
  return side * (BY_LEG[leg] ?? 0);
};

/** With the engine stopped, or stopping on the runway, the way ahead is all that matters. */
export const goesAhead = (emergency: Emergency): boolean =>
  emergency === 'engine-out' || emergency === 'abandoned';

export const lookName = (deg: number): string => {
  if (deg === 0) return 'ahead';
  return `${Math.abs(deg)}° ${deg < 0 ? 'left' : 'right'}`;
};
