import { fpmFromMps, ktFromMps, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import { glideReachM } from '../conflict.ts';
import type { Setting } from '../setting.ts';
import type { CircuitPlan } from '../types.ts';
import type { LegBrief, StretchBrief } from './types.ts';

/** A leg flown with the throttle closed, at its speed and flap: the sink is what that gives, wherever it leads. */
const gliding = (setting: Setting, plan: CircuitPlan, leg: LegBrief, stage: number): StretchBrief => {
  const last = leg.stretches[leg.stretches.length - 1] as StretchBrief;
  const { from, to } = plan.legs[leg.leg];
  const heightM = (from.heightM + to.heightM) / 2;
  const { verticalSpeedMps } = setting.steadyAt({ iasMps: leg.iasMps, throttle: 0 }, heightM, stage);
  return {
    ...last,
    way: 'gliding',
    iasMps: leg.iasMps,
    flapDeg: setting.aeroplane.flap.stages[stage]?.deg ?? 0,
    verticalSpeedMps,
    manifoldPa: null,
    fullPower: false,
  };
};

const baseChecks = (setting: Setting, leg: LegBrief): readonly string[] => {
  const heat = setting.aeroplane.engine.carburettor ? ['carburettor heat hot'] : [];
  return [
    ...heat,
    `throttle closed, ${fixed(ktFromMps(leg.iasMps))} kt, trim`,
    'warm the engine on the way down',
  ];
};

/** The legs of a glide approach: base and final have no planned slope and no power. */
export const glideLegs = (
  setting: Setting,
  plan: CircuitPlan,
  legs: readonly LegBrief[],
): readonly LegBrief[] =>
  legs.map((leg) => {
    if (leg.leg === 'base')
      return {
        ...leg,
        stretches: [gliding(setting, plan, leg, 0)],
        words: { ...leg.words, checks: baseChecks(setting, leg) },
      };
    if (leg.leg === 'final')
      return {
        ...leg,
        stretches: [gliding(setting, plan, leg, plan.legs.final.flapStage)],
        words: {
          ...leg.words,
          checks: ['flap by stages once the runway is sure', ...leg.words.checks.slice(1)],
        },
      };
    return leg;
  });

/** What is said of a glide approach instead of the powered one. */
export const glideSentence = (setting: Setting, plan: CircuitPlan): string => {
  const kt = fixed(setting.aeroplane.speeds.glideKt);
  const reach = fixed(nmiFromM(glideReachM(setting, plan.heightM)), 1);
  const clean = setting.aeroplane.undercarriage.retractable ? 'flap and wheels' : 'flap';
  const sink = thousandsTo(fpmFromMps(setting.glide.sinkMps), 10);
  return `Glide: throttle closed, the height held until ${kt} kt are there, then down at about ${sink} ft/min with ${clean} up. From circuit height it reaches about ${reach} NM against today's wind on final.`;
};
