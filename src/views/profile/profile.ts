import type { Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { mFromFt, mFromNmi } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { ViewFrame } from '../frame.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import { keyed } from '../ink/keyed.ts';
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

  draw(ink: Ink, colours: Colours, frame: ViewFrame, width: number, height: number): void {
    const track = this.unroll(frame);
    this.aheadM = this.locate(frame, track);
    this.look(frame, track, width, height);
    const { camera, aheadM } = this;
    const { snapshot, runway, ghost } = frame;
    const w = this.approach;
    const rightX = width - RIGHT_PX;
    const lights = w > 0.02 ? runway.lights : null;

    camera.aim(ink);
    ink.use(colours.paper);
    ink.rect(0, 0, width, height);
    if (lights !== null) drawSectors(ink, colours, camera, track, lights, LEFT_PX, TOP_PX, w);
    drawHeights(ink, colours, camera, width, 1 - w);
    drawGates(ink, colours, camera, frame.gates, width, w);
    drawPlannedHeights(ink, colours, track);
    drawGround(ink, colours, camera, track, width, height);
    drawMiles(ink, colours, camera, track, w);
    drawPoints(ink, colours, camera, track, runway, w);
    drawFlownHeights(ink, colours, camera, track, frame.trail, this.flown, snapshot, aheadM);
    if (lights !== null) drawSectorLetters(ink, colours, camera, track, lights, LEFT_PX, TOP_PX, w);
    if (w > 0.5) drawHeldPath(ink, colours, camera, snapshot, aheadM, track.endM + 2000);

    const { position } = frame.aeroplane.wing;
    if (ghost !== null) {
      this.ghostM = distanceAlong(track, ghost.eastM, ghost.northM, ghost.heightM, this.ghostM);
      drawAeroplane(ink, colours, camera, ghost, position, this.ghostM, colours.ghost);
    }
    drawAeroplane(ink, colours, camera, snapshot, position, aheadM, colours.aeroplane);
    if (frame.picture === 'whiteboard') drawHeightText(ink, colours, camera, snapshot, aheadM, rightX);

    // The title's strip stays clear.
    ink.use(colours.paper);
    ink.rect(0, 0, width, TITLE_PX);
    drawLegNames(ink, colours, camera, frame.plan, track, frame.leg, rightX);
    ink.use(colours.inkSoft);
    const caption = captionText(w > 0.5 ? 1 : 0, Math.round(camera.exaggeration * 10));
    ink.text('small', caption, width - 12, 14, 'right');
  }
}
