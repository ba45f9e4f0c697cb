import type { CircuitPlan } from '../circuit/types.ts';
import { createPilot, refusal } from '../pilot/pilot.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';
import { demonstrationPilot } from './demonstration-pilot.ts';

/** Why the model pilot will not fly this, as a sentence, or null. */
export const pilotRefusal = (model: Model, plan: CircuitPlan): string | null => refusal(model, plan);

export { otherPilot } from './other-pilot.ts';

/** The model pilot as a source of controls; where checks belong to the flight, one that works them. */
export const modelPilot = (model: Model, plan: CircuitPlan): ControlSource<unknown> => {
  const pilot = createPilot(model, plan) as ControlSource<unknown>;
  if (model.scenario.procedures === undefined) return pilot;
  return demonstrationPilot(pilot, model, plan) as ControlSource<unknown>;
};
