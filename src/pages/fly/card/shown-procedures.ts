import { create } from 'zustand';

export interface ShownItem {
  readonly id: string;
  readonly text: string;
  readonly how: 'worked' | 'set' | 'read' | 'asked';
  /** What doing it means, where a tick does not count. */
  readonly doing: string;
  readonly done: boolean;
  /** Ticked while the control stood otherwise. */
  readonly wrong: boolean;
  readonly note: string;
}

export interface ShownCheck {
  readonly title: string;
  readonly items: readonly ShownItem[];
  readonly done: number;
}

/** Wordings to choose from, in the order in which they are shown. */
export interface Prompt {
  /** `downwind`, or `back` for what the tower wants to hear. */
  readonly what: string;
  readonly title: string;
  readonly options: readonly { readonly text: string; readonly choice: number }[];
}

export interface Shown {
  /** Null: this flight has no procedures. */
  readonly check: ShownCheck | null;
  readonly on: boolean;
  /** What the tower said last. */
  readonly heard: string;
  /** What the model pilot says. */
  readonly spoken: string;
  readonly prompt: Prompt | null;
  /** The pilot wants to make the next call. */
  readonly calling: boolean;
  /** What the last call should have been. */
  readonly correction: string;
  readonly subscaleHpa: number;
  readonly qnhHpa: number;
  readonly coach: string;
}

/** A flight without procedures. */
export const NOTHING: Shown = {
  check: null,
  on: false,
  heard: '',
  spoken: '',
  prompt: null,
  calling: false,
  correction: '',
  subscaleHpa: 0,
  qnhHpa: 0,
  coach: '',
};

/** What of checks and calls is shown; the flight fills it once it has been loaded. */
export const useProcedures = create<Shown>()(() => NOTHING);
