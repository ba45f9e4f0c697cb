import { eastOf, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { PlanCamera } from './camera.ts';

/** A box in the turned axes of the plan, metres. */
export interface Box {
  leftM: number;
  rightM: number;
  lowM: number;
  highM: number;
}

export const newBox = (): Box => ({ leftM: 0, rightM: 0, lowM: 0, highM: 0 });

const empty = (box: Box): void => {
  box.leftM = Infinity;
  box.rightM = -Infinity;
  box.lowM = Infinity;
  box.highM = -Infinity;
};

const include = (box: Box, camera: PlanCamera, eastM: number, northM: number): void => {
  const right = camera.rightOf(eastM, northM);
  const ahead = camera.aheadOf(eastM, northM);
  box.leftM = Math.min(box.leftM, right);
  box.rightM = Math.max(box.rightM, right);
  box.lowM = Math.min(box.lowM, ahead);
  box.highM = Math.max(box.highM, ahead);
};

/** The whole planned circuit and the runway; `path` is east and north by turns. */
export function boxCircuit(box: Box, camera: PlanCamera, path: Float64Array, runway: Runway): void {
  empty(box);
  const sin = Math.sin(camera.upRad);
  const cos = Math.cos(camera.upRad);
  let { leftM, rightM, lowM, highM } = box;
  for (let i = 0; i + 1 < path.length; i += 2) {
    const east = path[i] as number;
    const north = path[i + 1] as number;
    const right = east * cos - north * sin;
    const ahead = east * sin + north * cos;
    if (right < leftM) leftM = right;
    if (right > rightM) rightM = right;
    if (ahead < lowM) lowM = ahead;
    if (ahead > highM) highM = ahead;
  }
  box.leftM = leftM;
  box.rightM = rightM;
  box.lowM = lowM;
  box.highM = highM;
  include(box, camera, eastOf(runway, runway.surfaceEndM, 0), northOf(runway, runway.surfaceEndM, 0));
}

/** The last part of the approach: the aeroplane, the threshold and a third of the runway. */
export function boxApproach(
  box: Box,
  camera: PlanCamera,
  runway: Runway,
  eastM: number,
  northM: number,
): void {
  empty(box);
  include(box, camera, eastM, northM);
  include(box, camera, 0, 0);
  const inside = Math.max(runway.specifiedM + 150, runway.landingLengthM / 3);
  include(box, camera, eastOf(runway, inside, 0), northOf(runway, inside, 0));
}

/** Grows a box so that it is at least so large about its middle. */
export function growTo(box: Box, widthM: number, heightM: number): void {
  const dw = Math.max(0, widthM - (box.rightM - box.leftM)) / 2;
  const dh = Math.max(0, heightM - (box.highM - box.lowM)) / 2;
  box.leftM -= dw;
  box.rightM += dw;
  box.lowM -= dh;
  box.highM += dh;
}

/** Pixels a metre that bring a box into a space. */
export const scaleFor = (box: Box, widthPx: number, heightPx: number): number =>
  Math.min(widthPx / Math.max(1, box.rightM - box.leftM), heightPx / Math.max(1, box.highM - box.lowM));
