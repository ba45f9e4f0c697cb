import { Container } from 'pixi.js';
import type { Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import {
  type Rect,
  type Stage,
  type StageOptions,
  VIEW_NAMES,
  type ViewFrame,
  type ViewRects,
} from './frame.ts';
import { type Feature, landOf } from './ground/land.ts';
import { LightsView } from './lights.ts';
import type { Palette } from './palette.ts';
import { type Colours, coloursOf } from './pen/colours.ts';
import { Letters } from './pen/letters.ts';
import { Panel } from './pen/panel.ts';
import { createRenderer } from './pen/renderer.ts';
import { PlanView } from './plan/plan.ts';
import { ProfileView } from './profile/profile.ts';
import { WindowView } from './window/window.ts';

export type {
  Gate,
  Picture,
  PlanMode,
  Rect,
  Stage,
  StageOptions,
  ViewFrame,
  ViewName,
  ViewRects,
} from './frame.ts';

const TYPEFACE = "'Lapwing Sans', 'IBM Plex Sans Variable', 'IBM Plex Sans', system-ui, sans-serif";
/** A frame that took longer moves the cameras by no more than this. */
const LONGEST_FRAME_S = 0.1;
/** After a pause or a jump in the flight every view is drawn at once. */
const PAUSE_MS = 120;
const JUMP_STEPS = 30;

const NO_DRAWING =
  'This browser draws neither with WebGL nor on a plain canvas, so plan, profile and window stay empty; scales, card and levers still work.';

/** The closer look stands in an upper corner of the window. */
const closerRect = (window: Rect, corner: 'left' | 'right'): Rect => {
  const width = Math.round(Math.min(240, window.width * 0.38));
  const height = Math.round(Math.min(width * 0.6, window.height * 0.6));
  const x = corner === 'left' ? window.x + 8 : window.x + window.width - width - 8;
  return { x, y: window.y + 8, width, height };
};

/**
 * The renderer for all drawn views under the page. Rejects with a sentence where the browser has neither WebGL nor a canvas;
 * panels and meters then still work.
 *
 * `draw` draws the window every time and plan and profile by turns: they move slowly, a pixel or two a second.
 * After a pause, a jump, a new layout or new colours everything is drawn at once.
 */
export async function createStage(
  canvas: HTMLCanvasElement,
  palette: Palette,
  options: StageOptions = {},
): Promise<Stage> {
  const pixelRatio = () => options.pixelRatio ?? Math.min(3, globalThis.devicePixelRatio || 1);
  const { renderer, kind } = await createRenderer(canvas).catch(() => {
    throw new Error(NO_DRAWING);
  });
  const fontFamily = options.fontFamily ?? TYPEFACE;
  let letters = new Letters(pixelRatio(), fontFamily);
  const panel = (count: number) => new Panel(kind, letters, count);
  const panels = {
    plan: panel(3),
    profile: panel(2),
    window: panel(1),
    lights: panel(1),
    closer: panel(1),
  };
  const layers = Object.values(panels).flatMap((each) => each.layers);
  const root = new Container();
  root.addChild(...Object.values(panels).map((each) => each.container));
  const plan = new PlanView(panels.plan.layers);
  const profile = new ProfileView(panels.profile.layers);
  const window = new WindowView(panels.window.pen, panels.closer.pen);
  const lights = new LightsView();

  let colours: Colours = coloursOf(palette);
  let land: readonly Feature[] = [];
  let aerodrome: Aerodrome | null = null;
  let runway: Runway | null = null;
  let lastMs = Number.NaN;
  let lastStep = 0;
  let turn = 0;
  let whole = true;
  let closerCorner: 'left' | 'right' | null = null;
  let lost = false;
  let destroyed = false;
  let places: ViewRects = {};

  /** Everything is drawn anew the next time. */
  const forget = (): void => {
    whole = true;
    plan.forget();
    profile.forget();
  };
  const setLetters = (next: Letters): void => {
    const old = letters;
    letters = next;
    for (const layer of layers) layer.takeLetters(next);
    old.destroy();
    forget();
  };
  // A typeface that arrives after the first frame.
  document.fonts?.ready.then(() => {
    if (!destroyed) setLetters(new Letters(letters.pixelRatio, fontFamily));
  });

  const onLost = (event: Event): void => {
    event.preventDefault();
    lost = true;
    options.onLost?.();
  };
  const onRestored = (): void => {
    lost = false;
    forget();
    options.onRestored?.();
  };
  canvas.addEventListener('webglcontextlost', onLost);
  canvas.addEventListener('webglcontextrestored', onRestored);

  /** Takes over a new place; what is kept of the old one would mislead. */
  const settle = (frame: ViewFrame): void => {
    aerodrome = frame.aerodrome;
    runway = frame.runway;
    land = landOf(aerodrome, runway);
    window.settle(runway, land);
    plan.jump();
    profile.jump();
    forget();
  };

  const layout = (): void => {
    const ratio = pixelRatio();
    renderer.resize(Math.max(1, canvas.clientWidth), Math.max(1, canvas.clientHeight), ratio);
    if (ratio !== letters.pixelRatio) setLetters(new Letters(ratio, fontFamily));
    for (const name of VIEW_NAMES) panels[name].settle(places[name]);
    panels.closer.settle(undefined);
    forget();
  };

  const drawWindow = (frame: ViewFrame): void => {
    const { closer } = panels;
    window.draw(colours, frame, panels.window.width, panels.window.height);
    if (window.closer === null) {
      if (closer.shown) closer.settle(undefined);
      return;
    }
    // In the other half than the runway.
    const corner = window.closer === 'left' ? 'right' : 'left';
    if (!closer.shown || corner !== closerCorner) closer.settle(closerRect(panels.window, corner));
    closerCorner = corner;
    window.drawCloser(colours, frame, closer.width, closer.height);
  };

  return {
    get lost() {
      return lost;
    },
    layout(rects: ViewRects): void {
      places = rects;
      layout();
    },
    draw(frame: ViewFrame): void {
      if (lost || destroyed) return;
      // A window moved to another screen keeps its size in CSS pixels.
      if (pixelRatio() !== letters.pixelRatio) layout();
      const nowMs = performance.now();
      const sinceS = options.stillCameras
        ? Infinity
        : Math.min(LONGEST_FRAME_S, (nowMs - lastMs) / 1000 || 0);
      const { step } = frame.snapshot;
      if (!(nowMs - lastMs < PAUSE_MS) || step < lastStep || step > lastStep + JUMP_STEPS) whole = true;
      lastMs = nowMs;
      lastStep = step;
      if (frame.aerodrome !== aerodrome || frame.runway !== runway) settle(frame);
      plan.wait(sinceS);
      profile.wait(sinceS);
      turn = 1 - turn;
      if (panels.plan.shown && (whole || turn === 0))
        plan.draw(colours, frame, land, panels.plan.width, panels.plan.height);
      if (panels.profile.shown && (whole || turn === 1))
        profile.draw(colours, frame, panels.profile.width, panels.profile.height);
      if (panels.window.shown) drawWindow(frame);
      if (panels.lights.shown && (lights.changed(frame) || whole))
        lights.draw(panels.lights.pen, colours, frame, panels.lights.width, panels.lights.height);
      whole = false;
      renderer.render(root);
    },
    setPalette(next: Palette): void {
      colours = coloursOf(next);
      forget();
    },
    destroy(): void {
      destroyed = true;
      canvas.removeEventListener('webglcontextlost', onLost);
      canvas.removeEventListener('webglcontextrestored', onRestored);
      for (const each of Object.values(panels)) each.destroy();
      root.destroy();
      letters.destroy();
      renderer.destroy();
    },
  };
}
