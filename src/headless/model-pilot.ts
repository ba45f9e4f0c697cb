import type { CircuitPlan } from '../circuit/types.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';

interface PilotModule {
  createPilot(model: Model, plan: CircuitPlan): ControlSource<unknown>;
  refusal(model: Model, plan: CircuitPlan): string | null;
}

const found = import.meta.glob<PilotModule>('../pilot/pilot.ts', { eager: true });
const module = Object.values(found)[0];

export const createPilot: PilotModule['createPilot'] = (model, plan) => {
  if (module === undefined) throw new Error('--controls must be given: there is no model pilot yet');
  return module.createPilot(model, plan);
};
export const refusal: PilotModule['refusal'] = (model, plan) => module?.refusal?.(model, plan) ?? null;
