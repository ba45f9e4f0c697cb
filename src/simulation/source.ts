import type { Controls } from './controls.ts';
import type { PilotEvent } from './pilot-event.ts';
import type { Snapshot } from './snapshot.ts';

/**
 * Whatever moves the controls: keyboard, gamepad, model pilot, playback. It is asked once per step, sees the
 * last Snapshot, and writes `controls` in place. Its memory is plain data (structured-clone and JSON safe), so
 * that a keyframe can hold it and a fork can copy it.
 */
export interface ControlSource<Memory> {
  readonly name: string;
  /**
   * It reads the world outside (keys, a gamepad), so the same memory need not give the same hands again.
   * A fork begins such a source anew; any other goes on with exactly the memory it had at that step.
   */
  readonly live?: boolean;
  begin(snapshot: Readonly<Snapshot>, controls: Readonly<Controls>): Memory;
  /** `controls` come in as the last step's. `around`: all aircraft of the session, for a source that looks at others. */
  next(
    snapshot: Readonly<Snapshot>,
    memory: Memory,
    controls: Controls,
    around?: readonly { readonly snapshot: Readonly<Snapshot> }[],
  ): void;
  /** What is done beside the controls at this step, where the source knows: a playback does. */
  events?(step: number): readonly PilotEvent[];
}
