import type { CircuitPlan } from '../../circuit/types.ts';
import type { ControlSource } from '../../session/source.ts';
import type { Model } from '../../simulation/model.ts';

/** Why the model pilot will not fly this, or null. */
export const pilotRefusal = (_model: Model, _plan: CircuitPlan): string | null =>
  'The model pilot is not here yet.';

/** The model pilot as a source of controls. */
export const modelPilot = (_model: Model, _plan: CircuitPlan): ControlSource<unknown> => ({
  name: 'model-pilot',
  begin: () => null,
  next: () => {},
});
