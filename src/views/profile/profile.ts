import type { Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { mFromFt, mFromNmi } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Gate, ViewFrame } from '../frame.ts';
import type { Colours } from '../pen/colours.ts';
import { keyed } from '../pen/keyed.ts';
import type { Layer } from '../pen/layer.ts';
import { drawGates, drawGround, drawHeights, drawMiles } from './axes.ts';
import { ProfileCamera } from './camera.ts';
import { drawAeroplane, drawFlownHeights, drawHeightText, drawHeldPath } from './flight-marks.ts';
import { FlownDistances } from './flown.ts';
import { BOTTOM_PX, LEFT_PX, RIGHT_PX, TITLE_PX, TOP_PX } from './frame.ts';
import { drawLegNames, drawPlannedHeights, drawPoints } from './plan-marks.ts';
import { drawSectorLetters, drawSectors } from './sectors.ts';
import { distanceAlong, plannedHeightM, type Track, trackOf } from './track.ts';

const GLIDE_S = 0.8;
const APPROACH_LEGS: ReadonlySet<string> = new Set([
  'turn-to-base',
  'base',
  'turn-to-final',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
]);
/** The approach is never shown shorter than this before the threshold. */
const SHORTEST_APPROACH_M = mFromNmi(0.45);
const LOWEST_TOP_M = mFromFt(180);
/** Before the beginning and after the end of the circuit unrolled. */
const BEFORE_M = 160;
const AFTER_M = 120;

const captionText = keyed((approach: number, tenths: number) => {
  const what = approach === 1 ? 'distance to the threshold, NM' : 'the circuit unrolled, distance flown';
  return `${what} · heights drawn ${fixed(tenths / 10, 1)} times · pitch true`;
});

/** What axes and planned circuit were drawn for. */
interface Still {
  colours: Colours | null;
  track: Track | null;
  gates: readonly Gate[];
  widthPx: number;
  approach: number;
  leftM: number;
  pxPerM: number;
  pxPerHeightM: number;
  groundY: number;
}

/**
 * The profile: the planned circuit unrolled by distance, and from the base turn the approach. Both are one
 * drawing under one camera: distance along the path is distance to the threshold, shifted; the change-over is
 * the camera closing in.
 */
export class ProfileView {
  readonly camera = new ProfileCamera();
  private readonly flown = new FlownDistances();
  private track: Track | null = null;
  private plan: CircuitPlan | null = null;
  private runway: Runway | null = null;
  private waitedS = 0;
  /** 0 the circuit unrolled, 1 the approach. */
  private approach = 0;
  private aheadM = Number.NaN;
  private ghostM = Number.NaN;
  private settled = false;
  private readonly still: Still = {
    colours: null,
    track: null,
    gates: [],
    widthPx: 0,
    approach: 0,
    leftM: 0,
    pxPerM: 0,
    pxPerHeightM: 0,
    groundY: 0,
  };

  private readonly layers: Readonly<Record<'still' | 'flight', Layer>>;

  /** Layers from the back to the front. */
  constructor([still, flight]: readonly Layer[]) {
    this.layers = { still, flight } as Record<'still' | 'flight', Layer>;
  }

  /** Everything is drawn anew the next time: other colours, other type. */
  forget(): void {
    this.still.colours = null;
  }

  jump(): void {
    this.settled = false;
    this.aheadM = Number.NaN;
    this.ghostM = Number.NaN;
  }

  /** Time passes for the camera; drawing takes all that has passed. */
  wait(sinceS: number): void {
    this.waitedS += sinceS;
  }

  private unroll(frame: ViewFrame): Track {
    if (this.track === null || this.plan !== frame.plan || this.runway !== frame.runway) {
      this.track = trackOf(frame.plan, frame.runway);
      this.plan = frame.plan;
      this.runway = frame.runway;
      this.jump();
    }
    return this.track;
  }

  /** Where the aeroplane is along the circuit: from where its trail last was, or from where it was drawn last. */
  private locate(frame: ViewFrame, track: Track): number {
    const { trail, snapshot } = frame;
    const trailM = this.flown.lastOf(track, trail, trail.pieces.length - 1);
    const before = Number.isFinite(trailM) ? trailM : this.aheadM;
    return distanceAlong(track, snapshot.eastM, snapshot.northM, snapshot.heightM, before);
  }

  private look(frame: ViewFrame, track: Track, width: number, height: number): void {
    const { camera, aheadM } = this;
    const { heightM } = frame.snapshot;
    const approaching = APPROACH_LEGS.has(frame.leg) && aheadM > track.baseTurnM - 400;
    const glide = this.settled ? 1 - Math.exp(-this.waitedS / GLIDE_S) : 1;
    this.waitedS = 0;
    this.settled = true;
    this.approach += ((approaching ? 1 : 0) - this.approach) * glide;
    const w = this.approach;

    // On the way in the approach shown gets shorter, and everything in it larger.
    const beforeM = Math.max(0, track.thresholdM - aheadM);
    const plannedM = track.thresholdM - track.baseTurnM;
    const shownM = Math.max(SHORTEST_APPROACH_M, Math.min(Math.max(plannedM, beforeM), beforeM * 1.3 + 150));
    const nearLeft = track.thresholdM - shownM;
    const nearRight = Math.max(
      track.thresholdM + track.runway.specifiedM + 260,
      Math.min(aheadM + 120, track.thresholdM + track.runway.surfaceEndM + 60),
    );
    const wholeTop = Math.max(frame.plan.heightM, heightM) * 1.22 + 12;
    const nearTop = Math.max(LOWEST_TOP_M, heightM * 1.15, plannedHeightM(track, nearLeft) * 1.1 + 6) + 10;

    const left = -BEFORE_M + (nearLeft + BEFORE_M) * w;
    const wholeRight = track.endM + AFTER_M;
    const right = wholeRight + (nearRight - wholeRight) * w;
    camera.leftM = left;
    camera.leftX = LEFT_PX;
    camera.pxPerM = (width - LEFT_PX - RIGHT_PX) / (right - left);
    camera.groundY = height - BOTTOM_PX;
    camera.pxPerHeightM = (height - TOP_PX - BOTTOM_PX) / (wholeTop + (nearTop - wholeTop) * w);
  }

  draw(colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const track = this.unroll(frame);
    this.aheadM = this.locate(frame, track);
    this.look(frame, track, width, height);
    if (this.standsElsewhere(colours, frame, track, width))
      this.drawStill(colours, frame, track, width, height);
    this.drawFlight(colours, frame, track, width);
  }

  /** Whether axes and planned circuit have to be drawn anew; they then stand as asked. */
  private standsElsewhere(colours: Colours, frame: ViewFrame, track: Track, width: number): boolean {
    const { camera, still } = this;
    const stands =
      still.colours === colours &&
      still.track === track &&
      still.gates === frame.gates &&
      still.widthPx === width &&
      still.approach === this.approach &&
      still.leftM === camera.leftM &&
      still.pxPerM === camera.pxPerM &&
      still.pxPerHeightM === camera.pxPerHeightM &&
      still.groundY === camera.groundY;
    if (stands) return false;
    still.colours = colours;
    still.track = track;
    still.gates = frame.gates;
    still.widthPx = width;
    still.approach = this.approach;
    still.leftM = camera.leftM;
    still.pxPerM = camera.pxPerM;
    still.pxPerHeightM = camera.pxPerHeightM;
    still.groundY = camera.groundY;
    return true;
  }

  private drawStill(colours: Colours, frame: ViewFrame, track: Track, width: number, height: number): void {
    const { camera, approach: w } = this;
    const { pen } = this.layers.still;
    const { runway } = frame;
    const lights = w > 0.02 ? runway.lights : null;
    pen.begin();
    camera.aim(pen);
    pen.use(colours.paper);
    pen.rect(0, 0, width, height);
    if (lights !== null) drawSectors(pen, colours, camera, track, lights, LEFT_PX, TOP_PX, w);
    drawHeights(pen, colours, camera, width, 1 - w);
    drawGates(pen, colours, camera, frame.gates, width, w);
    drawPlannedHeights(pen, colours, track);
    drawGround(pen, colours, camera, track, width, height);
    drawMiles(pen, colours, camera, track, w);
    drawPoints(pen, colours, camera, track, runway, w);
    if (lights !== null) drawSectorLetters(pen, colours, camera, track, lights, LEFT_PX, TOP_PX, w);
    pen.end();
  }

  private drawFlight(colours: Colours, frame: ViewFrame, track: Track, width: number): void {
    const { camera, aheadM, approach: w } = this;
    const { pen } = this.layers.flight;
    const { snapshot, ghost } = frame;
    const rightX = width - RIGHT_PX;
    pen.begin();
    camera.aim(pen);
    drawFlownHeights(pen, colours, camera, track, frame.trail, this.flown, snapshot, aheadM);
    if (w > 0.5) drawHeldPath(pen, colours, camera, snapshot, aheadM, track.endM + 2000);

    const { position } = frame.aeroplane.wing;
    if (ghost !== null) {
      this.ghostM = distanceAlong(track, ghost.eastM, ghost.northM, ghost.heightM, this.ghostM);
      drawAeroplane(pen, colours, camera, ghost, position, this.ghostM, colours.ghost);
    }
    drawAeroplane(pen, colours, camera, snapshot, position, aheadM, colours.aeroplane);
    if (frame.picture === 'whiteboard') drawHeightText(pen, colours, camera, snapshot, aheadM, rightX);

    // The title's strip stays clear.
    pen.use(colours.paper);
    pen.rect(0, 0, width, TITLE_PX);
    drawLegNames(pen, colours, camera, frame.plan, track, frame.leg, rightX);
    pen.use(colours.inkSoft);
    const caption = captionText(w > 0.5 ? 1 : 0, Math.round(camera.exaggeration * 10));
    pen.text('small', caption, width - 12, 14, 'right');
    pen.end();
  }
}
