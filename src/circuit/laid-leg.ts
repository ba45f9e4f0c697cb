import { hypot } from '../maths/functions.ts';
import type { Crab, Place } from './frame.ts';

/** A straight leg, laid out. */
export interface LaidLeg {
  readonly from: Place;
  readonly to: Place;
  readonly trackRad: number;
  readonly tasMps: number;
  readonly crab: Crab;
  readonly lengthM: number;
  readonly seconds: number;
  /** Of its climbing or descending part; 0 for a level leg. */
  readonly verticalSpeedMps: number;
  /** Height by distance along the leg, straight between the points. */
  readonly profile: readonly ProfilePoint[];
  /** Along the leg: where a climb ends, or where the descent begins; null where there is no such change. */
  readonly changeAtM: number | null;
}

export interface ProfilePoint {
  readonly atM: number;
  readonly heightM: number;
}

type Given = Pick<LaidLeg, 'from' | 'to' | 'trackRad' | 'tasMps' | 'crab' | 'verticalSpeedMps'> & {
  readonly changeAtM?: number | null;
  readonly between?: readonly ProfilePoint[];
};

export function laidLeg(given: Given): LaidLeg {
  const { from, to, changeAtM = null, between = [], ...rest } = given;
  const lengthM = hypot(to.xM - from.xM, to.yM - from.yM);
  return {
    ...rest,
    from,
    to,
    lengthM,
    seconds: lengthM / given.crab.groundspeedMps,
    profile: [{ atM: 0, heightM: from.heightM }, ...between, { atM: lengthM, heightM: to.heightM }],
    changeAtM: changeAtM === null ? null : Math.min(changeAtM, lengthM),
  };
}

/** Height on a leg at a distance from its beginning. */
export function heightOn(leg: LaidLeg, distanceM: number): number {
  const { profile } = leg;
  let i = 1;
  while (i < profile.length - 1 && (profile[i] as ProfilePoint).atM < distanceM) i += 1;
  const a = profile[i - 1] as ProfilePoint;
  const b = profile[i] as ProfilePoint;
  if (b.atM - a.atM < 1e-9) return b.heightM;
  return a.heightM + ((b.heightM - a.heightM) * (distanceM - a.atM)) / (b.atM - a.atM);
}
