import { degFromRad, nmiFromM, radFromDeg } from '../../units/conversions.ts';
import { fixed, thousands } from '../../units/format.ts';
import { triedForPower } from '../checks.ts';
import { glideReachM } from '../conflict.ts';
import type { Setting } from '../setting.ts';
import type { CircuitPlan } from '../types.ts';
import { landingStageToday } from './approach.ts';

/** Land ahead within this (CAA New Zealand Flight Instructor Guide, engine failure after take-off). */
const AHEAD_RAD = radFromDeg(30);

/** What if it stops, said before the take-off. */
export function engineFailureWords(setting: Setting): readonly string[] {
  const { aeroplane, aerodrome } = setting;
  const kt = fixed(aeroplane.speeds.glideKt);
  const circuitM = setting.runway.circuitHeightM;
  const reach = fixed(nmiFromM(glideReachM(setting, circuitM)), 1);
  return [
    'On the ground: throttle closed, straight, brakes hard.',
    `Airborne: nose down at once, ${kt} kt, a field within ${fixed(degFromRad(AHEAD_RAD))}° either side of the nose; never turn back below the height briefed for it.`,
    `Part of the power: ${kt} kt first; ${triedForPower(aeroplane).join(', ')}; leave alone what works.`,
    `Fly it down: flap when sure of the field; checks and a call if there is time. A glide from circuit height: ${reach} NM against today's wind.`,
    `Above ${thousands(aerodrome.circuit.crosswindTurnFt)} ft of height and turning, the fields ahead are others: choose them now.`,
  ];
}

/** Go-around: power, attitude, configuration (FAA-H-8083-3C p. 9-11 to 9-12; ACS IV.N). Radio last: common practice. */
export function goAroundWords(setting: Setting, plan: CircuitPlan): readonly string[] {
  const { aeroplane } = setting;
  const stages = aeroplane.flap.stages;
  // From the flap that is landed with today, one stage at once
  const landingStage = landingStageToday(setting, plan);
  const first = stages[Math.max(aeroplane.plan.takeOffStage, landingStage - 1)]?.deg ?? 0;
  const cold = aeroplane.engine.carburettor ? ', carburettor heat cold' : '';
  const { retractable } = aeroplane.undercarriage;
  // After a flapless approach there is none to bring in.
  const configuration =
    landingStage === 0
      ? `the flap is up already${retractable ? '; climbing, gear up' : ''}`
      : first === 0
        ? `climbing, ${retractable ? 'gear up, then ' : ''}flap up`
        : `from ${fixed(stages[landingStage]?.deg ?? 0)}° flap to ${fixed(first)}° first; climbing, ${retractable ? 'gear up, then ' : ''}the rest by stages`;
  return [
    `Power: full, smoothly${cold}; right foot.`,
    `Attitude: stop the descent, hold the nose against the trim, ${fixed(aeroplane.speeds.goAroundKt)} kt.`,
    `Configuration: ${configuration}; trim.`,
    'Then to the dead side where there is traffic, and call “going around”. Going around is never wrong.',
  ];
}
