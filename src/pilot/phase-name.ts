import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** What the pilot is doing; the turn onto a leg belongs to the leg. */
export type PhaseName =
  | 'take-off'
  | 'upwind'
  | 'crosswind'
  | 'downwind'
  | 'base'
  | 'final'
  | 'round-out'
  | 'landing-roll'
  | 'go-around'
  | 'extended'
  | 'orbit'
  | 'glide'
  | 'slip'
  | 'land-ahead';

const TURNED_ONTO: ReadonlySet<PhaseName> = new Set(['crosswind', 'downwind', 'base', 'final']);

export const beginPhase = (m: PilotMemory, v: Readonly<PilotView>, phase: PhaseName): void => {
  m.phase = phase;
  m.phaseFromS = v.timeS;
  m.turning = TURNED_ONTO.has(phase);
};
