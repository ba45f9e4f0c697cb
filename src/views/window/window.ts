import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { ViewFrame } from '../frame.ts';
import type { Feature } from '../ground/land.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import { drawTraffic, drawUnits, drawWindsock } from './beside.ts';
import { Brush } from './brush.ts';
import { Eye } from './eye.ts';
import { landScene } from './land.ts';
import { drawMachine } from './machine.ts';
import { runwayScene } from './runway.ts';
import type { SceneLayer } from './scene.ts';
import { drawHorizon, drawSky } from './sky.ts';

/** The ring about the aim point goes when the runway fills the view. */
const AIM_SHOWN_FROM_M = 150;
/** The closer look: so many times larger, while the runway is narrower than this and lies in the view. */
const CLOSER = 4;
const CLOSER_TEXT = `× ${CLOSER}`;
const NARROW_PX = 11;

/** What the pilot's eye sees, in plain lines and tints, and a closer look at the runway while it is far. */
export class WindowView {
  private readonly eye = new Eye();
  private readonly closerEye = new Eye();
  private readonly brush: Brush;
  private readonly closerBrush: Brush;
  private land: readonly SceneLayer[] = [];
  private strip: readonly SceneLayer[] = [];
  private readonly aim = new Float64Array(3);
  private readonly seen = new Float64Array(3);

  constructor(ink: Ink, closerInk: Ink) {
    this.brush = new Brush(ink, this.eye);
    this.closerBrush = new Brush(closerInk, this.closerEye);
  }

  /** What stands still in the world. */
  settle(runway: Runway, land: readonly Feature[]): void {
    this.land = landScene(land);
    this.strip = runwayScene(runway);
    this.aim[0] = eastOf(runway, runway.aimM, 0);
    this.aim[1] = northOf(runway, runway.aimM, 0);
    this.aim[2] = groundHeightM(runway, runway.aimM);
  }

  draw(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const { eye, brush } = this;
    eye.fit(width, height);
    eye.take(frame.snapshot, frame.lookRad);
    this.drawWorld(brush, colours, frame);
    this.closer = this.wantsCloser(frame, width);
    if (frame.picture === 'whiteboard') this.drawAim(colours, frame);
    drawMachine(brush, colours, frame.aeroplane);
  }

  private drawWorld(brush: Brush, colours: Colours, frame: ViewFrame): void {
    const { land, strip } = this;
    drawSky(brush.ink, colours, brush.eye);
    for (let i = 0; i < land.length; i += 1) brush.layer(land[i] as SceneLayer, colours);
    drawHorizon(brush.ink, colours, brush.eye);
    for (let i = 0; i < strip.length; i += 1) brush.layer(strip[i] as SceneLayer, colours);
    drawUnits(brush, colours, frame.runway, frame.lights);
    drawWindsock(brush, colours, frame.runway, frame.wind);
    if (frame.ghost !== null) drawTraffic(brush, colours, frame.ghost);
    for (const other of frame.traffic ?? []) drawTraffic(brush, colours, other);
  }

  /** Whether there is something to look closer at, and in which half of the window it lies. */
  closer: 'left' | 'right' | null = null;

  private wantsCloser(frame: ViewFrame, width: number): 'left' | 'right' | null {
    const { eye, seen } = this;
    eye.bring(this.aim, 0, seen, 0);
    const z = seen[2]!;
    if (z < AIM_SHOWN_FROM_M || (eye.focalPx * frame.runway.widthM) / z > NARROW_PX) return null;
    const x = eye.middleX + (eye.focalPx * seen[0]!) / z;
    const y = eye.middleY - (eye.focalPx * seen[1]!) / z;
    if (x < 0 || x > width || y < 0 || y > eye.middleY * 2.5) return null;
    // Keeps its side about the middle, so that the closer look does not hop.
    if (this.closer === 'right') return x < width * 0.42 ? 'left' : 'right';
    return x > width * 0.58 ? 'right' : 'left';
  }

  /** The closer look on its own sheet; after `draw`, when `closer` is not null. */
  drawCloser(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const { eye, closerEye, closerBrush, seen } = this;
    closerEye.fitCloser(width, height, eye.focalPx * CLOSER, seen);
    closerEye.take(frame.snapshot, frame.lookRad);
    this.drawWorld(closerBrush, colours, frame);
    const { ink } = closerBrush;
    ink.use(colours.inkSoft);
    ink.move(0.5, 0.5);
    ink.to(width - 0.5, 0.5);
    ink.to(width - 0.5, height - 0.5);
    ink.to(0.5, height - 0.5);
    ink.path(1.2, true);
    ink.use(colours.ink);
    ink.text('small', CLOSER_TEXT, width - 8, 11, 'right');
  }

  /** A small ring about the aim point, on the whiteboard only. */
  private drawAim(colours: Colours, frame: ViewFrame): void {
    const { brush, eye } = this;
    const { ink } = brush;
    if (!brush.stick(this.aim, 0, AIM_SHOWN_FROM_M)) return;
    const x = brush.pin[3]!;
    const y = brush.pin[4]!;
    const halfPx = (eye.focalPx * frame.runway.widthM * 0.5) / brush.pin[2]!;
    const right = frame.runway.lights?.side !== 1;
    const ringPx = Math.max(5, Math.min(9, halfPx));
    ink.use(colours.corridorText);
    ink.ring(x, y, ringPx, 1.5);
    if (this.closer !== null) return;
    ink.text('small', 'aim point', right ? x + 14 + halfPx : x - 14 - halfPx, y, right ? 'left' : 'right');
  }
}
