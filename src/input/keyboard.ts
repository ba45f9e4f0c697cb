import { ACTIONS, type ActionId, actionForKey, actionOf } from './actions.ts';
import type { Intent, IntentReader } from './intent.ts';
import { createKeyPlaces } from './key-place.ts';
import {
  addKeyEvent,
  advanceKeys,
  isHeld,
  type KeyTimeline,
  newKeyTimeline,
  pressesOf,
  releaseKeys,
} from './key-timeline.ts';

const pair = (timeline: KeyTimeline, more: ActionId, less: ActionId): number =>
  (isHeld(timeline, more) ? 1 : 0) - (isHeld(timeline, less) ? 1 : 0);

/** Adds what the keys ask for at this step to the intent; `asStick`: the lower arrow pulls. */
export const readKeys = (timeline: KeyTimeline, into: Intent, asStick = true): void => {
  const pitch = (asStick ? 1 : -1) * pair(timeline, 'nose-up', 'nose-down') + 0;
  const roll = pair(timeline, 'roll-right', 'roll-left');
  if (pitch !== 0 || roll !== 0) into.analogue = false;
  if (pitch !== 0) into.pitch = pitch;
  if (roll !== 0) into.roll = roll;
  into.rudder += pair(timeline, 'rudder-right', 'rudder-left');
  into.power += pair(timeline, 'power-up', 'power-down');
  into.trim += pair(timeline, 'trim-up', 'trim-down');
  if (isHeld(timeline, 'brake')) into.brake = 1;
  if (isHeld(timeline, 'let-go')) into.letGo = true;
  into.flapStages += pressesOf(timeline, 'flap-down') - pressesOf(timeline, 'flap-up');
  into.carbHeatPresses += pressesOf(timeline, 'carb-heat');
  into.pumpPresses += pressesOf(timeline, 'pump');
  into.gearPresses += pressesOf(timeline, 'gear');
  into.propeller += pair(timeline, 'propeller-fine', 'propeller-coarse');
  into.mixture += pair(timeline, 'mixture-rich', 'mixture-lean');
};

/** Actions that move the aeroplane's controls and therefore wait for their step; the rest are told at once. */
const STEPPED = new Set<ActionId>(
  ACTIONS.filter((a) => a.group === 'Flying' || a.group === 'Levers').map((a) => a.id),
);

export interface Keyboard extends IntentReader {
  /** Brings the keys to a step's own instant, in the time of `event.timeStamp`. */
  advance(instantMs: number): void;
  /** Presses a key from a button on the screen, as if it were struck at `atMs`. */
  strike(action: ActionId, down: boolean, atMs: number): void;
  release(): void;
  anyDown(): boolean;
  destroy(): void;
}

const TYPED_INTO = 'input:not([type=checkbox]):not([type=radio]):not([type=range]), textarea, select';
const HAS_OWN_SPACE = 'button, a[href], input, summary, select, textarea, [role=button], [role=slider]';
const HAS_OWN_ARROWS =
  'input[type=range], input[type=radio], select, textarea, [role=slider], [role=radio], [role=tab]';

/** True when the focused element needs this key for itself. */
const belongsToFocus = (event: KeyboardEvent): boolean => {
  const target = event.target instanceof Element ? event.target : null;
  if (!target) return false;
  if (target.matches(TYPED_INTO)) return true;
  if (event.key === ' ' && target.closest(HAS_OWN_SPACE)) return true;
  return event.key.startsWith('Arrow') && target.matches(HAS_OWN_ARROWS);
};

/**
 * Listens to the keys of a window. `onAction` hears at once whatever is not a control of the aeroplane (looking,
 * time, lesson), with true for down and false for up; it may return false to leave the key to the browser.
 * `enabled` says whether the page is flying (no sheet open).
 */
export const listenToKeys = (
  target: Window,
  onAction: (action: ActionId, down: boolean) => void,
  enabled: () => boolean,
  asStick: () => boolean = () => true,
): Keyboard => {
  const timeline = newKeyTimeline();
  const keyPlace = createKeyPlaces();
  /** Which action each physical key began, so that a changed Shift cannot leave a key hanging. */
  const begun = new Map<string, ActionId>();

  const tell = (action: ActionId, down: boolean, atMs: number) => {
    if (STEPPED.has(action)) addKeyEvent(timeline, { atMs, action, down });
    else if (down || actionOf(action).kind === 'held') onAction(action, down);
  };
  const onDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    if (!enabled() || belongsToFocus(event)) return;
    const place = keyPlace(event);
    // A key of one's own counts as it is written, whatever the script
    const action = actionForKey(event.key) ?? (place === null ? null : actionForKey(place));
    if (!action) return;
    event.preventDefault();
    if (event.repeat || begun.has(event.code)) return;
    begun.set(event.code, action);
    tell(action, true, event.timeStamp);
  };
  const onUp = (event: KeyboardEvent) => {
    const action = begun.get(event.code);
    if (!action) return;
    begun.delete(event.code);
    tell(action, false, event.timeStamp);
  };
  target.addEventListener('keydown', onDown);
  target.addEventListener('keyup', onUp);

  return {
    advance: (instantMs) => advanceKeys(timeline, instantMs),
    read: (into) => readKeys(timeline, into, asStick()),
    strike: (action, down, atMs) => tell(action, down, atMs),
    release: () => {
      for (const action of new Set(begun.values())) {
        if (!STEPPED.has(action) && actionOf(action).kind === 'held') onAction(action, false);
      }
      begun.clear();
      releaseKeys(timeline);
    },
    anyDown: () => begun.size > 0,
    destroy: () => {
      target.removeEventListener('keydown', onDown);
      target.removeEventListener('keyup', onUp);
    },
  };
};
