import type { PilotEvent } from '../simulation/pilot-event.ts';
import type { Snapshot } from '../simulation/snapshot.ts';

export type { ControlSource } from '../simulation/source.ts';

/** What watches a flight step by step, for instance the lesson; its memory is plain data too. */
export interface Fold<Memory> {
  begin(snapshot: Readonly<Snapshot>): Memory;
  /** `events`: what the pilot did beside the controls in the step that led here. */
  step(memory: Memory, snapshot: Readonly<Snapshot>, events?: readonly PilotEvent[]): void;
}
