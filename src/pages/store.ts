import { create } from 'zustand';
import type { Emergency } from '../flight/emergency.ts';
import type { LegMarks } from '../lesson/judge/leg-marks.ts';
import type { UnfinishedFlight } from '../storage/logbook.ts';
import type { Theme } from '../views/palette.ts';
import type { Look } from './fly/drawing/look.ts';
import type { Rate } from './fly/run/clock.ts';
import type { ResultCard } from './fly/run/shown-result.ts';
import { readSettings, type Settings, writeSettings } from './settings.ts';

/** What lies over the page: one sheet at a time. */
export type Sheet = 'start' | 'setup' | 'help' | 'result' | 'unfinished' | null;

/** How the drawn views stand. */
export type Graphics = 'loading' | 'drawn' | 'none' | 'lost';

/** The flight in words, as the bar shows it. */
export interface Headline {
  readonly exercise: string;
  readonly aerodrome: string;
  readonly runway: string;
  readonly side: string;
  readonly wind: string;
}

/** What is told of a part that did not come, and what can be done. */
export interface Missing {
  readonly says: string;
  /** Only reloading the page helps. */
  readonly reload: boolean;
  /** Tries again what needs it; null: whatever was pressed is pressed again. */
  readonly again: (() => void) | null;
}

/** Everything that changes slowly. What changes every frame never stands here. */
export interface Store {
  readonly theme: Theme;
  readonly settings: Settings;
  readonly sheet: Sheet;
  readonly graphics: Graphics;
  readonly graphicsWhy: string;
  /** A flight stands ready or runs. */
  readonly ready: boolean;
  readonly failed: string;
  readonly headline: Headline | null;
  /** It has been set going at least once. */
  readonly begun: boolean;
  readonly frozen: boolean;
  /** Why it stands still, when the user did not ask for it. */
  readonly frozenWhy: string;
  readonly rate: Rate;
  readonly pilot: 'hands' | 'model';
  /** As the lesson names it, and as it is said. */
  readonly legId: string;
  /** The card that stands instead of the leg's; empty: none. */
  readonly emergency: Emergency;
  readonly leg: string;
  readonly next: string;
  /** What was judged of this circuit's legs so far. */
  readonly marks: readonly LegMarks[];
  readonly look: Look;
  readonly planHeld: boolean;
  readonly planLooks: number;
  readonly stepsBack: number;
  readonly ticked: ReadonlySet<string>;
  readonly looking: string;
  /** Slope lights in words: "W W R R". */
  readonly lights: string;
  readonly notice: string;
  /** What the instructor says now. */
  readonly instruction: string;
  /** In the live region. */
  readonly spoken: string;
  readonly result: ResultCard | null;
  /** Id of the attempt that the flight became; empty until it is kept. */
  readonly attempt: string;
  /** Flights whose tab was closed. */
  readonly unfinished: readonly UnfinishedFlight[];
  /** A part of the page that did not come. */
  readonly missing: Missing | null;
  /** What is wrong with the browser's storage, in one sentence. */
  readonly storageSays: string;
  readonly gamepad: boolean;
  readonly sound: boolean;
  readonly flapStage: number;
  readonly carbHeat: boolean;
  readonly pump: boolean;
  readonly gearDown: boolean;
}

export const useStore = create<Store>()(() => {
  const settings = readSettings();
  return {
    theme: 'day',
    settings,
    sheet: settings.seenStart ? null : 'start',
    graphics: 'loading',
    graphicsWhy: '',
    ready: false,
    failed: '',
    headline: null,
    begun: false,
    frozen: true,
    frozenWhy: '',
    rate: 1,
    pilot: 'hands',
    legId: '',
    emergency: '',
    leg: '',
    next: '',
    marks: [],
    look: 'leg',
    planHeld: false,
    planLooks: 0,
    stepsBack: 0,
    ticked: new Set<string>(),
    looking: 'ahead',
    lights: '',
    notice: '',
    instruction: '',
    spoken: '',
    result: null,
    attempt: '',
    unfinished: [],
    missing: null,
    storageSays: '',
    gamepad: false,
    sound: false,
    flapStage: 0,
    carbHeat: false,
    pump: false,
    gearDown: true,
  };
});

/** Changes settings and keeps them. */
export const changeSettings = (changes: Partial<Settings>): void => {
  const settings = { ...useStore.getState().settings, ...changes };
  useStore.setState({ settings });
  if (!writeSettings(changes)) {
    useStore.setState({ notice: 'The browser keeps nothing for this page; settings last for this visit.' });
  }
};
