import { MARGIN } from '../../circuit/distances/with-margins.ts';
import { windOverLimits } from '../../circuit/runway-choice.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import type { Model } from '../../simulation/model.ts';
import { fixed } from '../../units/format.ts';

export const TAKE_OFF_FACTOR = MARGIN.takeOff;
export const LANDING_FACTOR = MARGIN.landing;

const NAMES = { takeOff: 'Take-off to 50 ft', landing: 'Landing from 50 ft' } as const;

/** Why a distance over 50 ft is not there, by the figures of the brief; null when it is. */
const tooShort = (plan: CircuitPlan, kind: keyof typeof NAMES): string | null => {
  const run = plan.runs[kind];
  if (run.fits) return null;
  const neededM = Math.max(run.modelM, run.byFactorsM);
  const needs = Number.isFinite(neededM)
    ? `needs ${fixed(neededM)} m, with the margin of ${run.margin} ${fixed(run.withMarginM)} m, and there are ${fixed(run.availableM)} m`
    : 'is more than any runway has';
  return `${NAMES[kind]} on runway ${plan.runway.designator} ${needs}.`;
};

/** Why the pilot's own sums forbid this flight, in one sentence; null when they allow it. */
export const refusal = (model: Model, plan: CircuitPlan): string | null => {
  const { runway, scenario } = model;
  const { aeroplane } = scenario;
  const wind = windOverLimits(aeroplane, runway, scenario.weather)[0];
  if (wind !== undefined) return wind;
  const takesOff = scenario.start.at === 'line-up' || scenario.circuits > 1;
  const over50Ft = (takesOff ? tooShort(plan, 'takeOff') : null) ?? tooShort(plan, 'landing');
  if (over50Ft !== null) return over50Ft;
  // It lands at the specified point and not at the threshold
  const landingM = plan.landingRunM * LANDING_FACTOR;
  const roomM = runway.surfaceEndM - runway.specifiedM;
  if (landingM > roomM)
    return `The landing run on runway ${runway.designator} is ${fixed(plan.landingRunM)} m, with the margin of ${LANDING_FACTOR} ${fixed(landingM)} m, and beyond the touchdown point the runway has ${fixed(roomM)} m.`;
  return null;
};
