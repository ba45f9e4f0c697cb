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

/** What the pilot's eye sees, in plain lines and tints. */
export class WindowView {
  private readonly eye = new Eye();
  private readonly brush: Brush;
  private land: readonly SceneLayer[] = [];
  private strip: readonly SceneLayer[] = [];
  private aim = new Float64Array(3);

  constructor(private readonly ink: Ink) {
    this.brush = new Brush(ink, this.eye);
  }

  /** What stands still in the world. */
  settle(runway: Runway, land: readonly Feature[]): void {
    this.land = landScene(land);
    this.strip = runwayScene(runway);
    this.aim = Float64Array.of(
      eastOf(runway, runway.aimM, 0),
      northOf(runway, runway.aimM, 0),
      groundHeightM(runway, runway.aimM),
    );
  }

  draw(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const { eye, brush, ink, land, strip } = this;
    eye.fit(width, height);
    eye.take(frame.snapshot, frame.lookRad);
    drawSky(ink, colours, eye);
    for (let i = 0; i < land.length; i += 1) brush.layer(land[i] as SceneLayer, colours);
    drawHorizon(ink, colours, eye);
    for (let i = 0; i < strip.length; i += 1) brush.layer(strip[i] as SceneLayer, colours);
    drawUnits(brush, colours, frame.runway, frame.lights);
    drawWindsock(brush, colours, frame.runway, frame.wind);
    if (frame.ghost !== null) drawTraffic(brush, colours, frame.ghost);
    if (frame.picture === 'whiteboard') this.drawAim(colours, frame);
    drawMachine(brush, colours, frame.aeroplane);
  }

  /** A small ring about the aim point, on the whiteboard only. */
  private drawAim(colours: Colours, frame: ViewFrame): void {
    const { brush, eye, ink } = this;
    if (!brush.stick(this.aim, 0, AIM_SHOWN_FROM_M)) return;
    const x = brush.pin[3]!;
    const y = brush.pin[4]!;
    const halfPx = (eye.focalPx * frame.runway.widthM * 0.5) / brush.pin[2]!;
    ink.use(colours.corridorText);
    ink.ring(x, y, Math.max(5, Math.min(9, halfPx)), 1.5);
    const right = frame.runway.lights?.side !== 1;
    const offset = 14 + halfPx;
    ink.text('small', 'aim point', right ? x + offset : x - offset, y, right ? 'left' : 'right');
  }
}
