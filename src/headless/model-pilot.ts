import type { CircuitPlan } from '../circuit/types.ts';
import * as pilot from '../pilot/pilot.ts';
import type { Model } from '../simulation/model.ts';

export const { createPilot } = pilot;

/** Why the model pilot will not fly this, as a sentence, or null. */
export const refusal = (model: Model, plan: CircuitPlan): string | null =>
  (pilot as { refusal?: (model: Model, plan: CircuitPlan) => string | null }).refusal?.(model, plan) ?? null;
