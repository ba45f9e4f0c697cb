import { useSyncExternalStore } from 'react';

/** The one instant that plots, plan, profile, window and lights show. */
export interface Cursor {
  now(): number;
  set(timeS: number): void;
  subscribe(listener: () => void): () => void;
}

export const createCursor = (endS: number, timeS = 0): Cursor => {
  let now = timeS;
  const listeners = new Set<() => void>();
  return {
    now: () => now,
    set: (to) => {
      const next = Math.max(0, Math.min(endS, to));
      if (next === now) return;
      now = next;
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
};

export const useCursor = (cursor: Cursor): number => useSyncExternalStore(cursor.subscribe, cursor.now);
