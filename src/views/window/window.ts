import { eastOf, groundHeightM, northOf, type Runway } from '../../aerodrome/runway.ts';
import type { ViewFrame } from '../frame.ts';
import type { Feature } from '../ground/land.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import { drawTraffic, drawUnits, drawWindsock } from './beside.ts';
import { Eye } from './eye.ts';
import { landScene } from './land.ts';
import { drawMachine } from './machine.ts';
import { Perspective } from './perspective.ts';
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
  private readonly perspective: Perspective;
  private readonly closerPerspective: Perspective;
  private land: readonly SceneLayer[] = [];
  private strip: readonly SceneLayer[] = [];
  private readonly aim = new Float64Array(3);
  private readonly seen = new Float64Array(3);

  constructor(pen: Pen, closerPen: Pen) {
    this.perspective = new Perspective(pen, this.eye);
    this.closerPerspective = new Perspective(closerPen, this.closerEye);
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
    const { eye, perspective } = this;
    eye.fit(width, height);
    eye.take(frame.snapshot, frame.lookRad);
    perspective.pen.begin();
    this.drawWorld(perspective, colours, frame);
    this.closer = this.wantsCloser(frame, width);
    if (frame.picture === 'whiteboard') this.drawAim(colours, frame);
    drawMachine(perspective, colours, frame.aeroplane);
    perspective.pen.end();
  }

  private drawWorld(perspective: Perspective, colours: Colours, frame: ViewFrame): void {
    const { land, strip } = this;
    drawSky(perspective.pen, colours, perspective.eye);
    for (let i = 0; i < land.length; i += 1) perspective.layer(land[i] as SceneLayer, colours);
    drawHorizon(perspective.pen, colours, perspective.eye);
    for (let i = 0; i < strip.length; i += 1) perspective.layer(strip[i] as SceneLayer, colours);
    drawUnits(perspective, colours, frame.runway, frame.lights);
    drawWindsock(perspective, colours, frame.runway, frame.wind);
    if (frame.ghost !== null) drawTraffic(perspective, colours, frame.ghost);
    for (const other of frame.traffic ?? []) drawTraffic(perspective, colours, other);
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

  /** The closer look in its own panel; after `draw`, when `closer` is not null. */
  drawCloser(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const { eye, closerEye, closerPerspective, seen } = this;
    closerEye.fitCloser(width, height, eye.focalPx * CLOSER, seen);
    closerEye.take(frame.snapshot, frame.lookRad);
    const { pen } = closerPerspective;
    pen.begin();
    this.drawWorld(closerPerspective, colours, frame);
    pen.use(colours.inkSoft);
    pen.move(0.5, 0.5);
    pen.to(width - 0.5, 0.5);
    pen.to(width - 0.5, height - 0.5);
    pen.to(0.5, height - 0.5);
    pen.path(1.2, true);
    pen.use(colours.ink);
    pen.text('small', CLOSER_TEXT, width - 8, 11, 'right');
    pen.end();
  }

  /** A small ring about the aim point, on the whiteboard only. */
  private drawAim(colours: Colours, frame: ViewFrame): void {
    const { perspective, eye } = this;
    const { pen } = perspective;
    if (!perspective.locate(this.aim, 0, AIM_SHOWN_FROM_M)) return;
    const x = perspective.located[3]!;
    const y = perspective.located[4]!;
    const halfPx = (eye.focalPx * frame.runway.widthM * 0.5) / perspective.located[2]!;
    const right = frame.runway.lights?.side !== 1;
    const ringPx = Math.max(5, Math.min(9, halfPx));
    pen.use(colours.corridorText);
    pen.ring(x, y, ringPx, 1.5);
    if (this.closer !== null) return;
    pen.text('small', 'aim point', right ? x + 14 + halfPx : x - 14 - halfPx, y, right ? 'left' : 'right');
  }
}
