import { windOverLimits } from '../../circuit/runway-choice.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import type { Model } from '../../simulation/model.ts';
import { fixed } from '../../units/format.ts';

/**
 * Margins on the runs that the sums give: take-off 1.33, landing 1.43 (the factors that UK general-aviation
 * safety leaflets recommend for light aeroplanes; from memory).
 */
const TAKE_OFF_FACTOR = 1.33;
export const LANDING_FACTOR = 1.43;

const runs = (metres: number): string =>
  Number.isFinite(metres) ? `${fixed(metres)} m` : 'more than any runway';

/** Why the pilot's own sums forbid this flight, in one sentence; null when they allow it. */
export const refusal = (model: Model, plan: CircuitPlan): string | null => {
  const { runway, scenario } = model;
  const { aeroplane } = scenario;
  const wind = windOverLimits(aeroplane, runway, scenario.weather)[0];
  if (wind !== undefined) return wind;
  const takeOffM = plan.takeOffRunM * TAKE_OFF_FACTOR;
  const takesOff = scenario.start.at === 'line-up' || scenario.circuits > 1;
  if (takesOff && takeOffM > runway.takeOffLengthM)
    return `The take-off run on runway ${runway.designator} is ${runs(plan.takeOffRunM)}, with the margin of ${TAKE_OFF_FACTOR} ${runs(takeOffM)}, and the runway has ${fixed(runway.takeOffLengthM)} m.`;
  const landingM = plan.landingRunM * LANDING_FACTOR;
  const roomM = runway.surfaceEndM - runway.specifiedM;
  if (landingM > roomM)
    return `The landing run on runway ${runway.designator} is ${runs(plan.landingRunM)}, with the margin of ${LANDING_FACTOR} ${runs(landingM)}, and beyond the touchdown point the runway has ${fixed(roomM)} m.`;
  return null;
};
