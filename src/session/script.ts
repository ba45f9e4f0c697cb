import { CONTROLS, type ControlRange, type Controls, copyControls } from '../simulation/controls.ts';
import type { ControlSource } from './source.ts';

/** What one row of a script asks for: in the order of CONTROLS, null where it says nothing. */
export interface ScriptRow {
  /** The first step that uses it. */
  readonly step: number;
  /** Positions. */
  readonly set: readonly (number | null)[];
  /** Added to the starting position. */
  readonly add: readonly (number | null)[];
}

export interface ScriptMemory {
  /** How many rows have begun. */
  begun: number;
  readonly start: Controls;
}

/** Open loop: hands that follow a script whatever the aeroplane does. No rows: hands off. */
export const createScript = (rows: readonly ScriptRow[]): ControlSource<ScriptMemory> => ({
  name: 'script',
  begin: (_, controls) => ({ begun: 0, start: { ...controls } }),
  next: (snapshot, memory, controls) => {
    const before = memory.begun;
    while (memory.begun < rows.length && (rows[memory.begun] as ScriptRow).step <= snapshot.step)
      memory.begun += 1;
    if (memory.begun === before) return;
    const row = rows[memory.begun - 1] as ScriptRow;
    copyControls(memory.start, controls);
    for (let i = 0; i < CONTROLS.length; i += 1) {
      const { name, low, high } = CONTROLS[i] as ControlRange;
      const set = row.set[i] ?? null;
      const add = row.add[i] ?? null;
      if (set !== null) controls[name] = set;
      if (add !== null) controls[name] = Math.min(high, Math.max(low, memory.start[name] + add));
    }
  },
});
