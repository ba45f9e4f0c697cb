import type { ActionId } from './actions.ts';

/**
 * Key events in the order of their own time stamps, read step by step: a step sees the keys as they were at its
 * own instant, however many frames a second the screen draws. A press shorter than a step still counts for one.
 */
export interface KeyEvent {
  readonly atMs: number;
  readonly action: ActionId;
  readonly down: boolean;
}

export interface KeyTimeline {
  readonly waiting: KeyEvent[];
  readonly held: Set<ActionId>;
  /** How often each was pressed since the step before this one. */
  readonly presses: Map<ActionId, number>;
}

export const newKeyTimeline = (): KeyTimeline => ({ waiting: [], held: new Set(), presses: new Map() });

/** Adds an event; events may come slightly out of order. */
export const addKeyEvent = (timeline: KeyTimeline, event: KeyEvent): void => {
  const { waiting } = timeline;
  let at = waiting.length;
  while (at > 0 && (waiting[at - 1] as KeyEvent).atMs > event.atMs) at -= 1;
  waiting.splice(at, 0, event);
};

/** Makes the timeline show the keys at `instantMs`; what was pressed since the last call counts as pressed. */
export const advanceKeys = (timeline: KeyTimeline, instantMs: number): void => {
  const { waiting, held, presses } = timeline;
  if (presses.size > 0) presses.clear();
  let used = 0;
  for (; used < waiting.length; used += 1) {
    const event = waiting[used] as KeyEvent;
    if (event.atMs > instantMs) break;
    if (!event.down) {
      held.delete(event.action);
    } else if (!held.has(event.action)) {
      held.add(event.action);
      presses.set(event.action, (presses.get(event.action) ?? 0) + 1);
    }
  }
  if (used > 0) waiting.splice(0, used);
};

/** True while held, and for one step after a press that was shorter than a step. */
export const isHeld = (timeline: KeyTimeline, action: ActionId): boolean =>
  timeline.held.has(action) || timeline.presses.has(action);

/** How often it was pressed in this step. */
export const pressesOf = (timeline: KeyTimeline, action: ActionId): number =>
  timeline.presses.get(action) ?? 0;

/** Lets every key go and forgets what waits: a frozen or hidden page has no hands on the keys. */
export const releaseKeys = (timeline: KeyTimeline): void => {
  timeline.waiting.length = 0;
  timeline.held.clear();
  timeline.presses.clear();
};
