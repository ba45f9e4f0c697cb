import type { CircuitPlan } from '../circuit/types.ts';
import { createPilot, refusal } from '../pilot/pilot.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';

/** Why the model pilot will not fly this, as a sentence, or null. */
export const pilotRefusal = (model: Model, plan: CircuitPlan): string | null => refusal(model, plan);

export { otherPilot } from './other-pilot.ts';

/** The model pilot as a source of controls. */
export const modelPilot = (model: Model, plan: CircuitPlan): ControlSource<unknown> =>
  createPilot(model, plan) as ControlSource<unknown>;
