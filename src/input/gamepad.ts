import type { ActionId } from './actions.ts';
import type { Intent, IntentReader } from './intent.ts';
import { curved, steadied } from './stick-curve.ts';

/**
 * A game controller in the "standard" layout of the W3C Gamepad recommendation (section "Remapping"): left stick
 * axes 0, 1; right stick 2, 3; triggers buttons 6, 7; shoulders 4, 5; hat 12 up, 13 down, 14 left, 15 right.
 * Left stick flies, right stick is feet and trim wheel, the triggers move the power lever, the shoulders the flap.
 */
export interface Pad {
  readonly connected: boolean;
  readonly mapping: string;
  readonly axes: readonly number[];
  readonly buttons: readonly { readonly pressed: boolean; readonly value: number }[];
}

export interface PadReading {
  pitch: number;
  roll: number;
  rudder: number;
  trim: number;
  power: number;
  brake: number;
  letGo: boolean;
  readonly pressed: boolean[];
}

export const newPadReading = (): PadReading => ({
  pitch: 0,
  roll: 0,
  rudder: 0,
  trim: 0,
  power: 0,
  brake: 0,
  letGo: false,
  pressed: [],
});

/** Buttons that ask for something once, by their number in the standard layout. */
export const PAD_PRESSES: Readonly<Record<number, ActionId>> = {
  1: 'carb-heat',
  3: 'take-over',
  4: 'flap-up',
  5: 'flap-down',
  8: 'step-back',
  9: 'freeze',
  10: 'make-call',
  11: 'tick-check',
  12: 'look-ahead',
  13: 'look-leg',
  14: 'look-left',
  15: 'look-right',
};
const BRAKE = 0;
const LET_GO = 2;

const axis = (pad: Pad, at: number) => curved(pad.axes[at] ?? 0);
const trigger = (pad: Pad, at: number) => curved(pad.buttons[at]?.value ?? 0);

/** Reads a pad into `into` and tells each press once. */
export const readPad = (pad: Pad, into: PadReading, onPress: (action: ActionId) => void): void => {
  into.roll = steadied(into.roll, axis(pad, 0));
  into.pitch = steadied(into.pitch, axis(pad, 1));
  into.rudder = steadied(into.rudder, axis(pad, 2));
  into.trim = steadied(into.trim, axis(pad, 3));
  into.power = steadied(into.power, trigger(pad, 7) - trigger(pad, 6));
  into.brake = pad.buttons[BRAKE]?.pressed ? 1 : 0;
  into.letGo = pad.buttons[LET_GO]?.pressed ?? false;
  for (let i = 0; i < pad.buttons.length; i += 1) {
    const pressed = pad.buttons[i]?.pressed ?? false;
    const action = PAD_PRESSES[i];
    if (pressed && !into.pressed[i] && action) onPress(action);
    into.pressed[i] = pressed;
  }
};

export interface Gamepads extends IntentReader {
  /** Once a frame. */
  poll(): void;
  readonly connected: boolean;
}

/**
 * Watches for pads. `onAction` hears presses (flap and heat are counted for the next step instead); `onChange`
 * hears a pad come and go.
 */
export const watchGamepads = (
  pads: () => readonly (Pad | null)[],
  onAction: (action: ActionId) => void,
  onChange: (connected: boolean) => void,
): Gamepads => {
  const reading = newPadReading();
  let connected = false;
  let flapStages = 0;
  let carbHeatPresses = 0;
  const onPress = (action: ActionId) => {
    if (action === 'flap-down') flapStages += 1;
    else if (action === 'flap-up') flapStages -= 1;
    else if (action === 'carb-heat') carbHeatPresses += 1;
    else onAction(action);
  };
  return {
    get connected() {
      return connected;
    },
    poll: () => {
      let found: Pad | null = null;
      const all = pads();
      for (let i = 0; i < all.length && !found; i += 1) {
        const pad = all[i];
        if (pad?.connected && pad.mapping === 'standard') found = pad;
      }
      if (found) readPad(found, reading, onPress);
      else Object.assign(reading, newPadReading());
      if (connected !== (found !== null)) {
        connected = found !== null;
        onChange(connected);
      }
    },
    read: (into: Intent) => {
      if (!connected) return;
      if (reading.pitch !== 0 || reading.roll !== 0) {
        into.pitch = reading.pitch;
        into.roll = reading.roll;
        into.analogue = true;
      }
      into.rudder += reading.rudder;
      into.trim += reading.trim;
      into.power += reading.power;
      into.brake = Math.max(into.brake, reading.brake);
      into.letGo ||= reading.letGo;
      into.flapStages += flapStages;
      into.carbHeatPresses += carbHeatPresses;
      flapStages = 0;
      carbHeatPresses = 0;
    },
  };
};
