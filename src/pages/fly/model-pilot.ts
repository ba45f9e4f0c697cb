import type { CircuitPlan } from '../../circuit/types.ts';
import { createPilot } from '../../pilot/pilot.ts';
import type { ControlSource } from '../../session/source.ts';
import type { Model } from '../../simulation/model.ts';

/** Why the model pilot will not fly this, or null. */
export const pilotRefusal = (_model: Model, _plan: CircuitPlan): string | null => null;

/** The model pilot as a source of controls. */
export const modelPilot = (model: Model, plan: CircuitPlan): ControlSource<unknown> =>
  createPilot(model, plan) as ControlSource<unknown>;
