import { acrossM, alongM, type Runway } from '../../aerodrome/runway.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import type { PlanMode, ViewFrame } from '../frame.ts';
import type { Feature } from '../ground/land.ts';
import type { Colours } from '../pen/colours.ts';
import type { Layer } from '../pen/layer.ts';
import { drawAeroplane, drawHeadingAndTrack, type LabelSide } from './aeroplane.ts';
import { PlanCamera } from './camera.ts';
import { drawBaseTurnLine, drawCorridor, drawLegNames, groundPath } from './circuit.ts';
import { boxApproach, boxCircuit, growTo, newBox, scaleFor } from './fit.ts';
import { drawNorth, drawScaleBar, drawWind } from './furniture.ts';
import { drawLand } from './land.ts';
import { drawCentreline, drawRunway, drawRunwayLights } from './runway.ts';
import { BEYOND_PX, StillPicture } from './still.ts';
import { drawTrail } from './trail.ts';

/** Room for the panel's title above, the scale bar below, and names at the sides. */
const MARGIN_TOP_PX = 40;
const MARGIN_BOTTOM_PX = 34;
const MARGIN_SIDE_PX = 44;
/** On the side away from the circuit the wind and north have their place. */
const MARGIN_WIND_PX = 122;
/** The glide of the camera towards where it should look. */
const GLIDE_S = 0.7;
const ZOOM_S = 2.2;
/** The closest view: this much ground from top to bottom. */
const CLOSEST_M = 1100;
/** Zooming in begins this far from the threshold and is complete at the second distance. */
const ZOOM_FROM_M = 3200;
const ZOOM_TO_M = 900;

const FINAL_LEGS: ReadonlySet<string> = new Set(['final', 'hold-off', 'landing-roll', 'stopped']);

const smooth = (share: number): number => {
  const t = Math.max(0, Math.min(1, share));
  return t * t * (3 - 2 * t);
};

/** How much of the closer view is wanted, 0 to 1: on final, near the runway, continuous in distance. */
const wantedZoom = (runway: Runway, snapshot: Readonly<Snapshot>, leg: string): number => {
  if (!FINAL_LEGS.has(leg)) return 0;
  const along = alongM(runway, snapshot.eastM, snapshot.northM);
  const across = acrossM(runway, snapshot.eastM, snapshot.northM);
  const beforeM = Math.sqrt(along * along + across * across);
  return along > 0 ? 1 : smooth((ZOOM_FROM_M - beforeM) / (ZOOM_FROM_M - ZOOM_TO_M));
};

const upOf = (mode: PlanMode, runway: Runway, snapshot: Readonly<Snapshot>): number => {
  if (mode === 'north-up') return 0;
  return mode === 'track-up' ? snapshot.trackRadT : runway.headingRadT;
};

/** The plan: the circuit seen from above. It keeps a camera and a label's side, nothing of the flight. */
export class PlanView {
  readonly camera = new PlanCamera();
  private readonly wide = newBox();
  private readonly close = newBox();
  private readonly label: LabelSide = { side: 1, across: false, above: false };
  private waitedS = 0;
  private zoom = 0;
  private settled = false;
  private widthPx = 0;
  private heightPx = 0;
  private readonly still = new StillPicture();
  private readonly stillCircuit = new StillPicture();

  private readonly layers: Readonly<Record<'land' | 'circuit' | 'flight', Layer>>;

  /** Layers from the back to the front. */
  constructor([land, circuit, flight]: readonly Layer[]) {
    this.layers = { land, circuit, flight } as Record<'land' | 'circuit' | 'flight', Layer>;
  }

  /** Everything is drawn anew the next time: other colours, other type. */
  forget(): void {
    this.still.forget();
    this.stillCircuit.forget();
  }

  /** After a jump (another runway, a step back) the camera is there at once. */
  jump(): void {
    this.settled = false;
  }

  /** Time passes for the camera; drawing takes all that has passed. */
  wait(sinceS: number): void {
    this.waitedS += sinceS;
  }

  private look(frame: ViewFrame, width: number, height: number): void {
    const sinceS = this.waitedS;
    this.waitedS = 0;
    const { camera } = this;
    if (width !== this.widthPx || height !== this.heightPx) this.settled = false;
    this.widthPx = width;
    this.heightPx = height;
    const glide = this.settled ? 1 - Math.exp(-sinceS / GLIDE_S) : 1;
    const wantedUp = upOf(frame.planMode, frame.runway, frame.snapshot);
    const upRad = camera.upRad + wrapPi(wantedUp - camera.upRad) * glide;
    camera.turn(upRad);

    const roomX = Math.max(50, width - MARGIN_SIDE_PX - MARGIN_WIND_PX);
    const roomY = Math.max(50, height - MARGIN_TOP_PX - MARGIN_BOTTOM_PX);
    camera.middleX = width / 2 - (frame.plan.side * (MARGIN_SIDE_PX - MARGIN_WIND_PX)) / 2;
    camera.middleY = MARGIN_TOP_PX + roomY / 2;

    boxCircuit(this.wide, camera, groundPath(frame.plan), frame.runway);
    boxApproach(this.close, camera, frame.runway, frame.snapshot.eastM, frame.snapshot.northM);
    growTo(this.close, CLOSEST_M, CLOSEST_M);
    const wanted = wantedZoom(frame.runway, frame.snapshot, frame.leg);
    this.zoom = this.settled ? this.zoom + (wanted - this.zoom) * (1 - Math.exp(-sinceS / ZOOM_S)) : wanted;
    const z = this.zoom;
    // Scales blend by their logarithm, so that the zoom feels even.
    const wideScale = scaleFor(this.wide, roomX, roomY);
    const closeScale = Math.max(wideScale, scaleFor(this.close, roomX, roomY));
    const scale = Math.exp(Math.log(wideScale) * (1 - z) + Math.log(closeScale) * z);
    // The middle follows the share of the zoom that is already on the screen, so that nothing leaves the picture.
    const m =
      closeScale > wideScale * 1.001 ? (1 / wideScale - 1 / scale) / (1 / wideScale - 1 / closeScale) : z;
    const right =
      ((this.wide.leftM + this.wide.rightM) / 2) * (1 - m) + ((this.close.leftM + this.close.rightM) / 2) * m;
    const ahead =
      ((this.wide.lowM + this.wide.highM) / 2) * (1 - m) + ((this.close.lowM + this.close.highM) / 2) * m;
    if (frame.planMode === 'track-up' && m < 0.5) {
      // The aeroplane stays put and the land turns under it: a third of the panel from below.
      camera.pxPerM = scale;
      camera.rightM = camera.rightOf(frame.snapshot.eastM, frame.snapshot.northM);
      camera.aheadM = camera.aheadOf(frame.snapshot.eastM, frame.snapshot.northM) + (roomY * 0.17) / scale;
    } else {
      camera.pxPerM = scale;
      camera.rightM = right;
      camera.aheadM = ahead;
    }
    this.settled = true;
  }

  /** Land, runway and planned circuit are drawn when something about them changes, what flies every time. */
  draw(colours: Colours, frame: ViewFrame, land: readonly Feature[], width: number, height: number): void {
    this.look(frame, width, height);
    const { camera, layers, still, stillCircuit } = this;
    const { runway, plan, leg } = frame;
    if (still.follow(camera, layers.land, colours, land, '')) {
      const { pen } = layers.land;
      pen.begin();
      camera.aim(pen);
      pen.use(colours.paper);
      // Larger than the panel: the layer may be moved before it is drawn again.
      pen.rect(-BEYOND_PX, -BEYOND_PX, width + 2 * BEYOND_PX, height + 2 * BEYOND_PX);
      drawLand(pen, colours, camera, land);
      pen.end();
    }
    if (stillCircuit.follow(camera, layers.circuit, colours, plan, leg)) {
      const { pen } = layers.circuit;
      pen.begin();
      camera.aim(pen);
      drawCentreline(pen, colours, camera, runway);
      drawCorridor(pen, colours, camera, plan);
      drawBaseTurnLine(pen, colours, camera, plan);
      drawLegNames(pen, colours, camera, plan, leg);
      drawRunway(pen, colours, camera, runway);
      pen.end();
    }
    this.drawFlight(colours, frame, width, height);
  }

  private drawFlight(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const { camera } = this;
    const { pen } = this.layers.flight;
    const { snapshot, runway, plan, aeroplane } = frame;
    pen.begin();
    camera.aim(pen);
    drawRunwayLights(pen, colours, camera, runway, frame.lights);
    pen.use(colours.aeroplane, 0.55);
    for (let p = 0; p < frame.forecast.length; p += 1) {
      const path = frame.forecast[p];
      if (path === undefined || path.eastM.length < 2) continue;
      pen.lift();
      pen.tracePairs(path.eastM, path.northM, path.eastM.length, null);
      pen.dashedPath(1.3, 4, 4);
    }
    drawTrail(pen, colours, camera, frame.trail, snapshot);
    drawHeadingAndTrack(pen, colours, camera, snapshot, runway.variationRad, width, height, this.label);
    const { position, spanM } = aeroplane.wing;
    if (frame.ghost !== null)
      drawAeroplane(pen, colours, camera, frame.ghost, position, spanM, colours.ghost);
    for (const other of frame.traffic ?? [])
      drawAeroplane(pen, colours, camera, other, position, spanM, colours.ghost);
    drawAeroplane(pen, colours, camera, snapshot, position, spanM, colours.aeroplane);

    const windX = plan.side === -1 ? width - 66 : 66;
    drawWind(pen, colours, camera, frame.wind, runway.variationRad, windX, 62);
    drawNorth(pen, colours, camera, windX, 162);
    drawScaleBar(pen, colours, camera, 20, height - 18);
    pen.end();
  }
}
