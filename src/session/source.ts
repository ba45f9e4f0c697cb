import type { Snapshot } from '../simulation/snapshot.ts';

export type { ControlSource } from '../simulation/source.ts';

/** What watches a flight step by step, for instance the lesson; its memory is plain data too. */
export interface Fold<Memory> {
  begin(snapshot: Readonly<Snapshot>): Memory;
  step(memory: Memory, snapshot: Readonly<Snapshot>): void;
}
