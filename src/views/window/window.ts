import { eastOf, groundHeightM, northOf } from '../../aerodrome/runway.ts';
import type { ViewFrame } from '../frame.ts';
import type { Feature } from '../ground/land.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import { drawTraffic, drawUnits, drawWindsock } from './beside.ts';
import { Brush } from './brush.ts';
import { Eye } from './eye.ts';
import { drawLandAhead } from './land.ts';
import { drawMachine } from './machine.ts';
import { drawRunwayAhead } from './runway.ts';
import { drawHorizon, drawSky } from './sky.ts';

/** What the pilot's eye sees, in plain lines and tints. */
export class WindowView {
  private readonly eye = new Eye();
  private brush: Brush | null = null;

  draw(
    ink: Ink,
    colours: Colours,
    frame: ViewFrame,
    land: readonly Feature[],
    width: number,
    height: number,
  ): void {
    const { eye } = this;
    this.brush ??= new Brush(ink, eye);
    const { brush } = this;
    eye.fit(width, height);
    eye.take(frame.snapshot, frame.lookRad);
    drawSky(ink, colours, eye);
    drawLandAhead(brush, colours, land);
    drawHorizon(ink, colours, eye);
    drawRunwayAhead(brush, colours, frame.runway);
    drawUnits(brush, colours, frame.runway, frame.lights);
    drawWindsock(brush, colours, frame.runway, frame.wind);
    if (frame.ghost !== null) drawTraffic(brush, colours, frame.ghost);
    if (frame.picture === 'whiteboard') this.drawAim(ink, colours, frame, width);
    drawMachine(brush, colours, frame.aeroplane);
  }

  /** A ring about the aim point, on the whiteboard only; it goes when the runway fills the view. */
  private drawAim(ink: Ink, colours: Colours, frame: ViewFrame, width: number): void {
    const { eye } = this;
    const { runway } = frame;
    const east = eastOf(runway, runway.aimM, 0);
    const north = northOf(runway, runway.aimM, 0);
    const height = groundHeightM(runway, runway.aimM);
    const z = eye.zOf(east, north, height);
    if (z < 150) return;
    const x = eye.screenX(eye.xOf(east, north, height), z);
    const y = eye.screenY(eye.yOf(east, north, height), z);
    if (x < 0 || x > width) return;
    const radius = 7;
    ink.use(colours.corridorText);
    ink.ring(x, y, radius, 1.6);
    const away = runway.lights?.side === 1 ? -1 : 1;
    const offset = Math.max(radius + 6, (eye.focalPx * runway.widthM * 0.8) / z);
    ink.text('small', 'aim point', x + away * offset, y, away === 1 ? 'left' : 'right');
  }
}
