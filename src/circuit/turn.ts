import { cos, log, sin, tan } from '../maths/functions.ts';
import { G0_MPS2 } from '../units/constants.ts';
import type { Place, WindAt } from './frame.ts';

/** Rate of a coordinated turn: g tan bank / V. */
export const turnRateRadps = (tasMps: number, bankRad: number): number => (G0_MPS2 * tan(bankRad)) / tasMps;

export interface TurnRequest {
  readonly from: Place;
  readonly fromHeadingRad: number;
  /** Not before `fromHeadingRad`: angles count upwards. */
  readonly toHeadingRad: number;
  readonly tasMps: number;
  readonly bankRad: number;
  /** Rate of rolling into and out of the bank; infinite for a turn that is all bank. */
  readonly rollRateRadps: number;
  /** + up, relative to the air and the ground alike. */
  readonly verticalSpeedMps: number;
  /** A climb stops here. */
  readonly highestM: number;
  readonly windAt: WindAt;
}

export interface TurnPoint extends Place {
  readonly timeS: number;
}

export interface FlownTurn {
  readonly seconds: number;
  /** Reached: less than asked where the heading change is too small to roll in and out. */
  readonly bankRad: number;
  /** About one a second, first and last included. */
  readonly points: readonly TurnPoint[];
  readonly to: TurnPoint;
}

const STEP_S = 0.25;
const STEPS_A_POINT = 4;

/**
 * A turn as the wind carries it: the circle of the air drifts with the air at each height.
 * Bank rises and falls at a constant rate of roll and is constant between; while it rises, the heading turns by
 * the integral of g tan(p t) / V, which is -g / (V p) ln cos(p t). Positions by the midpoint rule, 0.25 s.
 */
export function flyTurn(request: TurnRequest): FlownTurn {
  const { from, tasMps, rollRateRadps, verticalSpeedMps, windAt } = request;
  const changeRad = request.toHeadingRad - request.fromHeadingRad;
  const rolling = Number.isFinite(rollRateRadps);
  const turnedWhileRolling = (bankRad: number): number =>
    rolling ? (-G0_MPS2 / (tasMps * rollRateRadps)) * log(cos(bankRad)) : 0;
  let bankRad = request.bankRad;
  while (bankRad > 0.01 && 2 * turnedWhileRolling(bankRad) > changeRad) bankRad *= 0.9;
  const rateRadps = turnRateRadps(tasMps, bankRad);
  const rollS = rolling ? bankRad / rollRateRadps : 0;
  const rolledRad = turnedWhileRolling(bankRad);
  const steadyS = Math.max(0, changeRad - 2 * rolledRad) / rateRadps;
  const seconds = 2 * rollS + steadyS;

  const headingAt = (timeS: number): number => {
    if (timeS < rollS) return request.fromHeadingRad + turnedWhileRolling(rollRateRadps * timeS);
    if (timeS <= rollS + steadyS) return request.fromHeadingRad + rolledRad + rateRadps * (timeS - rollS);
    return request.toHeadingRad - turnedWhileRolling(rollRateRadps * Math.max(0, seconds - timeS));
  };
  const heightAt = (timeS: number): number =>
    verticalSpeedMps > 0
      ? Math.max(from.heightM, Math.min(request.highestM, from.heightM + verticalSpeedMps * timeS))
      : from.heightM + verticalSpeedMps * timeS;
  const levelMps = Math.sqrt(tasMps * tasMps - verticalSpeedMps * verticalSpeedMps);

  const steps = Math.max(1, Math.ceil(seconds / STEP_S));
  const stepS = seconds / steps;
  let { xM, yM } = from;
  const points: TurnPoint[] = [{ ...from, timeS: 0 }];
  for (let i = 0; i < steps; i += 1) {
    const middleS = (i + 0.5) * stepS;
    const heading = headingAt(middleS);
    const wind = windAt(heightAt(middleS));
    xM += (levelMps * cos(heading) + wind.xMps) * stepS;
    yM += (levelMps * sin(heading) + wind.yMps) * stepS;
    const timeS = (i + 1) * stepS;
    if ((i + 1) % STEPS_A_POINT === 0 || i === steps - 1)
      points.push({ xM, yM, heightM: heightAt(timeS), timeS });
  }
  return { seconds, bankRad, points, to: points.at(-1) as TurnPoint };
}
