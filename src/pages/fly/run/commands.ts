import type { ActionId } from '../../../input/actions.ts';
import type { ReadyFlight } from './ready.ts';

/**
 * The one way from buttons and keys to the flight. The flight registers itself when it has been loaded; until
 * then nothing happens.
 */
export interface FlightCommands {
  /** The flight that is shown; null while there is none. */
  shown(): ReadyFlight | null;
  /** Down or up, at an instant in the time of `event.timeStamp`. */
  act(action: ActionId, down: boolean, atMs: number): void;
  /** Puts the power lever where a slider was dragged, 0..1; the trim wheel likewise, -1..1. */
  moveLever(lever: 'throttle' | 'trim', to: number): void;
  setFlapStage(stage: number): void;
  /** Where a finger holds the stick on the screen; null when it has let go. */
  holdStick(at: { readonly pitch: number; readonly roll: number } | null): void;
  /** Prepares the flight that the settings ask for; false when it cannot be, with the reason in the store. */
  prepare(): boolean;
  /** The same flight from its beginning, where another page handed it over; otherwise as `prepare`. */
  again(): boolean;
  /** Goes on with a flight whose tab was closed. */
  takeUp(id: string): void;
  watch(): void;
  start(): void;
  /** A sheet covers the page, or is gone. */
  cover(covered: boolean): void;
  tick(check: string): void;
  /** Works an item of a check that belongs to the flight. */
  work(item: string): void;
  /** Stands the flight where it was at `timeS`, frozen, from there on flown by hand. */
  fromInstant(timeS: number): void;
  setSound(on: boolean): void;
  /** The demonstration that has just been shown goes into the logbook. */
  keepShown(): void;
  /** Nothing more to do on the runway. */
  finish(): void;
}

let registered: FlightCommands | null = null;

export const registerFlight = (commands: FlightCommands | null): void => {
  registered = commands;
};

export const flightCommands = (): FlightCommands | null => registered;

/** A single press. */
export const press = (action: ActionId): void => {
  const atMs = performance.now();
  registered?.act(action, true, atMs);
  registered?.act(action, false, atMs + 1);
};

export const hold = (action: ActionId, down: boolean): void => {
  registered?.act(action, down, performance.now());
};
