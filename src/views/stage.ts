import 'pixi.js/unsafe-eval';
import { Container, Ticker, WebGLRenderer } from 'pixi.js';
import type { Runway } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import {
  type Stage,
  type StageOptions,
  VIEW_NAMES,
  type ViewFrame,
  type ViewName,
  type ViewRects,
} from './frame.ts';
import { type Feature, landOf } from './ground/land.ts';
import { type Colours, coloursOf } from './ink/colours.ts';
import { Glyphs } from './ink/glyphs.ts';
import { Sheet } from './ink/sheet.ts';
import { drawLights } from './lights.ts';
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

/**
 * The renderer for all drawn views under the page. Rejects with a sentence where the browser has no WebGL 2;
 * meters and panels then still work.
 */
export async function createStage(
  canvas: HTMLCanvasElement,
  palette: Palette,
  options: StageOptions = {},
): Promise<Stage> {
  // Its own timers are never used: frames are drawn when the page says so.
  Ticker.system.autoStart = false;
  Ticker.system.stop();
  const renderer = new WebGLRenderer<HTMLCanvasElement>();
  const pixelRatio = () => options.pixelRatio ?? Math.min(3, globalThis.devicePixelRatio || 1);
  try {
    await renderer.init({
      canvas,
      width: Math.max(1, canvas.clientWidth),
      height: Math.max(1, canvas.clientHeight),
      resolution: pixelRatio(),
      autoDensity: false,
      antialias: true,
      backgroundAlpha: 0,
      preferWebGLVersion: 2,
      skipExtensionImports: true,
      powerPreference: 'low-power',
    });
  } catch {
    throw new Error(
      'This browser gives no WebGL 2, which the drawn views need; panels and meters still work.',
    );
  }

  const fontFamily = options.fontFamily ?? TYPEFACE;
  let glyphs = new Glyphs(pixelRatio(), fontFamily);
  const root = new Container();
  const sheets = Object.fromEntries(VIEW_NAMES.map((name) => [name, new Sheet(glyphs)])) as Record<
    ViewName,
    Sheet
  >;
  for (const name of VIEW_NAMES) root.addChild(sheets[name].container);
  const plan = new PlanView();
  const profile = new ProfileView();
  const window = new WindowView(sheets.window.ink);

  let colours: Colours = coloursOf(palette);
  let land: readonly Feature[] = [];
  let landAerodrome: Aerodrome | null = null;
  let landRunway: Runway | null = null;
  let lastMs = Number.NaN;
  let lost = false;
  let destroyed = false;

  const drawings: Record<ViewName, (sheet: Sheet, frame: ViewFrame, sinceS: number) => void> = {
    plan: ({ ink, width, height }, frame, sinceS) =>
      plan.draw(ink, colours, frame, land, width, height, sinceS),
    profile: ({ ink, width, height }, frame, sinceS) =>
      profile.draw(ink, colours, frame, width, height, sinceS),
    window: ({ width, height }, frame) => window.draw(colours, frame, width, height),
    lights: ({ ink, width, height }, frame) => drawLights(ink, colours, frame, width, height),
  };

  const setGlyphs = (next: Glyphs): void => {
    const old = glyphs;
    glyphs = next;
    for (const name of VIEW_NAMES) sheets[name].takeGlyphs(next);
    old.destroy();
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
    options.onRestored?.();
  };
  canvas.addEventListener('webglcontextlost', onLost);
  canvas.addEventListener('webglcontextrestored', onRestored);

  return {
    get lost() {
      return lost;
    },
    layout(rects: ViewRects): void {
      const ratio = pixelRatio();
      renderer.resize(Math.max(1, canvas.clientWidth), Math.max(1, canvas.clientHeight), ratio);
      if (ratio !== glyphs.pixelRatio) setGlyphs(new Glyphs(ratio, fontFamily));
      for (const name of VIEW_NAMES) sheets[name].settle(rects[name]);
    },
    draw(frame: ViewFrame): void {
      if (lost || destroyed) return;
      const nowMs = performance.now();
      const sinceS = options.stillCameras
        ? Infinity
        : Math.min(LONGEST_FRAME_S, (nowMs - lastMs) / 1000 || 0);
      lastMs = nowMs;
      if (frame.aerodrome !== landAerodrome || frame.runway !== landRunway) {
        land = landOf(frame.aerodrome, frame.runway);
        landAerodrome = frame.aerodrome;
        landRunway = frame.runway;
        window.settle(frame.runway, land);
        plan.jump();
      }
      for (let i = 0; i < VIEW_NAMES.length; i += 1) {
        const name = VIEW_NAMES[i] as ViewName;
        const sheet = sheets[name];
        if (!sheet.shown) continue;
        sheet.ink.begin();
        drawings[name](sheet, frame, sinceS);
        sheet.print();
      }
      glyphs.refresh();
      renderer.render(root);
    },
    setPalette(next: Palette): void {
      colours = coloursOf(next);
    },
    destroy(): void {
      destroyed = true;
      canvas.removeEventListener('webglcontextlost', onLost);
      canvas.removeEventListener('webglcontextrestored', onRestored);
      for (const name of VIEW_NAMES) sheets[name].destroy();
      glyphs.destroy();
      root.destroy();
      renderer.destroy();
    },
  };
}
