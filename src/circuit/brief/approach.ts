import { ktFromMps, mpsFromKt } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Setting } from '../setting.ts';
import type { CircuitPlan } from '../types.ts';
import type { ApproachBrief } from './types.ts';

/** Gusts and crosswind from which the last stage of flap stays in (FAA-H-8083-3C p. 9-20: partial flap). */
const GUSTY_MPS = mpsFromKt(2);
const STRONG_CROSSWIND_SHARE = 0.6;

const kt = (mps: number): string => fixed(ktFromMps(mps));

/** Landing flap, or that of the approach where the wind is gusty or strongly across. */
export function landingStageToday(setting: Setting, plan: CircuitPlan): number {
  const { finalStage, landingStage } = setting.aeroplane.plan;
  const acrossMps = Math.abs(plan.legs.final.crosswindMps);
  const strongMps = STRONG_CROSSWIND_SHARE * mpsFromKt(setting.aeroplane.limits.crosswindKt);
  return plan.gustAdditionMps > GUSTY_MPS || acrossMps > strongMps ? finalStage : landingStage;
}

/** Approach speed with half the gust on top, and the flap to land with. */
export function approachBrief(setting: Setting, plan: CircuitPlan): ApproachBrief {
  const { aeroplane, weather } = setting;
  const { approachIasMps: iasMps, gustAdditionMps } = plan;
  const still = kt(iasMps - gustAdditionMps);
  const sentence =
    weather.gustKt === null || gustAdditionMps === 0
      ? `Approach at ${kt(iasMps)} kt: no gusts reported, nothing to add.`
      : `Approach at ${kt(iasMps)} kt: ${still} kt and half of the ${weather.gustKt - weather.windKt} kt between wind and gust.`;
  const { finalStage, landingStage } = aeroplane.plan;
  const stages = aeroplane.flap.stages;
  const deg = (stage: number): string => fixed(stages[stage]?.deg ?? 0);
  const today = landingStageToday(setting, plan);
  const reason =
    gustAdditionMps > GUSTY_MPS
      ? 'answers better in gusts and is moved less by them'
      : 'is easier to hold straight across this wind';
  const landingFlap =
    finalStage === landingStage
      ? finalStage === 0
        ? 'Land with the flap up.'
        : `Land with flap ${deg(finalStage)}°.`
      : today === finalStage
        ? `Leave the flap at ${deg(finalStage)}°: with less flap the aeroplane ${reason}.`
        : `Landing flap ${deg(landingStage)}° once final is established, before the 300 ft gate.`;
  return {
    iasMps,
    gustAdditionMps,
    sentence,
    landingFlap,
    landingStage: today,
    source: 'half the gust factor: FAA-H-8083-3C p. 9-20; +10/-5 kt: FAA-S-ACS-6 IV.B',
  };
}
