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
import { type Colours, coloursOf } from './ink/colours.ts';
import { Glyphs } from './ink/glyphs.ts';
import { Press } from './ink/press.ts';
import { createInkRenderer, type InkRenderer } from './ink/renderer.ts';
import { Sheet } from './ink/sheet.ts';
import { LightsView } from './lights.ts';
import type { Palette } from './palette.ts';
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

/** The closer look stands in an upper corner of the window. */
const closerRect = (window: Rect, corner: 'left' | 'right'): Rect => {
  const width = Math.round(Math.min(240, window.width * 0.38));
  const height = Math.round(Math.min(width * 0.6, window.height * 0.6));
  const x = corner === 'left' ? window.x + 8 : window.x + window.width - width - 8;
  return { x, y: window.y + 8, width, height };
};

const newRenderer = (canvas: HTMLCanvasElement): InkRenderer => {
  try {
    return createInkRenderer(canvas);
  } catch {
    throw new Error(
      'This browser gives no WebGL 2, which the drawn views need; panels and meters still work.',
    );
  }
};

/**
 * The renderer for all drawn views under the page. Rejects with a sentence where the browser has no WebGL 2;
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
  const renderer = newRenderer(canvas);
  const fontFamily = options.fontFamily ?? TYPEFACE;
  let glyphs = new Glyphs(pixelRatio(), fontFamily);
  const sheets = {
    plan: new Sheet(glyphs),
    profile: new Sheet(glyphs),
    window: new Sheet(glyphs),
    lights: new Sheet(glyphs),
    closer: new Sheet(glyphs),
  };
  const press = new Press(renderer, Object.values(sheets), glyphs);
  const plan = new PlanView();
  const profile = new ProfileView();
  const window = new WindowView(sheets.window.ink, sheets.closer.ink);
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
  let canvasWidth = 1;
  let canvasHeight = 1;
  let lost = false;
  let destroyed = false;

  const setGlyphs = (next: Glyphs): void => {
    const old = glyphs;
    glyphs = next;
    press.takeGlyphs(next);
    old.destroy();
    whole = true;
  };
  // A typeface that arrives after the first frame.
  document.fonts?.ready.then(() => {
    if (!destroyed) setGlyphs(new Glyphs(glyphs.pixelRatio, fontFamily));
  });

  const onLost = (event: Event): void => {
    event.preventDefault();
    lost = true;
    options.onLost?.();
  };
  const onRestored = (): void => {
    lost = false;
    whole = true;
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
    whole = true;
  };

  const drawPlan = (frame: ViewFrame): void => {
    const { ink, width, height } = sheets.plan;
    ink.begin();
    plan.draw(ink, colours, frame, land, width, height);
  };
  const drawProfile = (frame: ViewFrame): void => {
    const { ink, width, height } = sheets.profile;
    ink.begin();
    profile.draw(ink, colours, frame, width, height);
  };
  const drawWindow = (frame: ViewFrame): void => {
    const { width, height, ink } = sheets.window;
    ink.begin();
    window.draw(colours, frame, width, height);
    const { closer } = sheets;
    closer.ink.begin();
    if (window.closer === null) return;
    // In the other half than the runway.
    const corner = window.closer === 'left' ? 'right' : 'left';
    if (corner !== closerCorner) {
      closerCorner = corner;
      closer.settle(closerRect(sheets.window, corner));
      press.settle(canvasWidth, canvasHeight);
    }
    window.drawCloser(colours, frame, closer.width, closer.height);
  };

  return {
    get lost() {
      return lost;
    },
    layout(rects: ViewRects): void {
      const ratio = pixelRatio();
      const width = Math.max(1, canvas.clientWidth);
      const height = Math.max(1, canvas.clientHeight);
      renderer.resize(width, height, ratio);
      if (ratio !== glyphs.pixelRatio) setGlyphs(new Glyphs(ratio, fontFamily));
      for (const name of VIEW_NAMES) sheets[name].settle(rects[name]);
      closerCorner = null;
      canvasWidth = width;
      canvasHeight = height;
      press.settle(width, height);
      whole = true;
    },
    draw(frame: ViewFrame): void {
      if (lost || destroyed) return;
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
      if (sheets.plan.shown && (whole || turn === 0)) drawPlan(frame);
      if (sheets.profile.shown && (whole || turn === 1)) drawProfile(frame);
      if (sheets.window.shown) drawWindow(frame);
      if (sheets.lights.shown && (lights.changed(frame) || whole)) {
        const { ink, width, height } = sheets.lights;
        ink.begin();
        lights.draw(ink, colours, frame, width, height);
      }
      whole = false;
      press.print();
    },
    setPalette(next: Palette): void {
      colours = coloursOf(next);
      whole = true;
    },
    destroy(): void {
      destroyed = true;
      canvas.removeEventListener('webglcontextlost', onLost);
      canvas.removeEventListener('webglcontextrestored', onRestored);
      press.destroy();
      glyphs.destroy();
      renderer.destroy();
    },
  };
}
