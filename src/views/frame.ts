import type { Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import type { SeenLights } from '../aerodrome/slope-lights.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import type { Palette } from './palette.ts';
import type { Trail } from './trail.ts';

/** Whiteboard shows every learning aid; cockpit only what a cockpit has. */
export type Picture = 'whiteboard' | 'cockpit';

/** What lies up on the plan. */
export type PlanMode = 'runway-up' | 'north-up' | 'track-up';

/** A height on the approach at which the aeroplane must be stabilised. */
export interface Gate {
  readonly heightFt: number;
  /** Shown at its line, for instance "300 ft". */
  readonly text: string;
}

/** A path that has not been flown: what would follow if the controls stayed as they are. */
export interface ForecastPath {
  readonly eastM: ArrayLike<number>;
  readonly northM: ArrayLike<number>;
  readonly heightM: ArrayLike<number>;
}

/** Surface wind as it is spoken. */
export interface SpokenWind {
  readonly fromDegM: number;
  readonly kt: number;
  readonly gustKt: number | null;
}

/**
 * Everything one frame is drawn from: plain data, never the session. The page may fill one object again and
 * again; views read it during `draw` and keep nothing of it but the identity of `plan`, `runway`, `aerodrome`.
 */
export interface ViewFrame {
  /** Already blended between two steps. */
  snapshot: Readonly<Snapshot>;
  plan: CircuitPlan;
  runway: Runway;
  aerodrome: Aerodrome;
  aeroplane: Aeroplane;
  /** What the eye sees of the slope lights now; null where they are not worked out. */
  lights: Readonly<SeenLights> | null;
  /** Name of the leg as the lesson detects it, for instance "downwind" or "turn-to-final". */
  leg: string;
  trail: Trail;
  forecast: readonly ForecastPath[];
  /** Direction of view relative to the nose, + right. */
  lookRad: number;
  picture: Picture;
  wind: SpokenWind;
  planMode: PlanMode;
  /** A second aeroplane, or null. */
  ghost: Readonly<Snapshot> | null;
  /** Others in the circuit that could be seen now: drawn on plan and window only. */
  traffic?: readonly Readonly<Snapshot>[];
  gates: readonly Gate[];
}

/** A panel's place inside the canvas, CSS pixels from the canvas's upper left corner. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const VIEW_NAMES = ['plan', 'profile', 'window', 'lights'] as const;
export type ViewName = (typeof VIEW_NAMES)[number];

/** Where each view is drawn; a view without a place is not drawn. */
export type ViewRects = Partial<Record<ViewName, Rect>>;

export interface StageOptions {
  /** Of the screen when left out. */
  readonly pixelRatio?: number;
  /** Cameras jump instead of gliding (prefers-reduced-motion). */
  readonly stillCameras?: boolean;
  readonly fontFamily?: string;
  /** The graphics context went away: nothing is drawn until it is back. */
  readonly onLost?: () => void;
  readonly onRestored?: () => void;
}

/** One renderer and one canvas for all drawn views. */
export interface Stage {
  /** Reads the canvas's own size from the page (CSS pixels) and takes the panels' places. */
  layout(rects: ViewRects): void;
  draw(frame: ViewFrame): void;
  setPalette(palette: Palette): void;
  readonly lost: boolean;
  destroy(): void;
}

/** The scale of the window, stated beside it. */
export const WINDOW_FIELD_OF_VIEW_DEG = 60;
