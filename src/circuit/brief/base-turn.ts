import { acrossM } from '../../aerodrome/runway.ts';
import { atan2, tan } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { degFromRad, ktFromMps, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import { chooseCircuit } from '../choose.ts';
import { type Setting, settle } from '../setting.ts';
import type { CircuitPlan, PlanOptions } from '../types.ts';
import type { BaseTurnBrief } from './types.ts';

const SAME_RAD = radFromDeg(1);
const NOTHING_MPS = mpsFromKt(1);

const deg = (rad: number): string => fixed(degFromRad(rad));
const kt = (mps: number): string => fixed(Math.abs(ktFromMps(mps)));
const metres = (m: number): string => thousandsTo(m, 10);

/**
 * The base turn of the same circuit in still air beside today's, and the reason in sentences: the two turns
 * drift with the air, and the final is to begin where it begins in still air.
 */
export function baseTurnBrief(setting: Setting, plan: CircuitPlan, options: PlanOptions): BaseTurnBrief {
  const { aeroplane, aerodrome, runway, shape, weather } = setting;
  const calm = settle(shape, aeroplane, aerodrome, runway, {
    ...weather,
    windKt: 0,
    gustKt: null,
    turbulence: 'none',
  });
  const still = chooseCircuit(calm, { ...options, spacingM: plan.spacingM }).layout;
  const stillStart = still.baseTurn.points[0]!;
  const stillAirAngleRad = atan2(-stillStart.xM, plan.spacingM);
  const stillAirLeadM = Math.abs(still.finalTurn.points[0]!.yM);
  const angleRad = plan.baseTurnAngleRad;
  const { downwind, base, final } = plan.legs;
  const movedM = plan.spacingM * (tan(stillAirAngleRad) - tan(angleRad));
  const earlierS = movedM / downwind.groundspeedMps;
  const from = plan.turns.final.from;
  const finalTurnLeadM = Math.abs(acrossM(runway, from.eastM, from.northM));
  const baseS = base.seconds;
  const toTurnRad = Math.abs(wrapPi(final.headingRadT - base.headingRadT));

  const sentences: string[] = [];
  const when = `${fixed(Math.abs(earlierS))} s ${earlierS > 0 ? 'earlier' : 'later'}`;
  const along = final.tailwindMps;
  if (Math.abs(angleRad - stillAirAngleRad) < SAME_RAD)
    sentences.push(
      `Begin the base turn with the threshold ${deg(angleRad)}° behind the wing: the wind along the runway hardly moves it.`,
    );
  else
    sentences.push(
      `Begin the base turn with the threshold ${deg(angleRad)}° behind the wing, ${when} than the ${deg(stillAirAngleRad)}° of still air: in the two turns the wind carries the aeroplane ${metres(Math.abs(movedM))} m ${along < 0 ? 'back from' : 'towards'} the runway.`,
    );
  const lead = `begin the turn to final ${metres(finalTurnLeadM)} m before the centreline`;
  sentences.push(
    Math.abs(base.tailwindMps) < NOTHING_MPS
      ? `On base no wind ahead or behind: ${fixed(baseS)} s, and ${lead}.`
      : `On base ${kt(base.tailwindMps)} kt ${base.tailwindMps > 0 ? 'from behind' : 'ahead'}: ${kt(base.groundspeedMps)} kt over the ground, ${fixed(baseS)} s, and ${lead} (${metres(stillAirLeadM)} m in still air; with the crab ${deg(toTurnRad)}° to turn).`,
  );
  return {
    angleRad,
    stillAirAngleRad,
    earlierS,
    finalTurnLeadM,
    stillAirLeadM,
    sentences,
  };
}
