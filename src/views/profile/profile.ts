import { groundHeightM, type Runway } from '../../aerodrome/runway.ts';
import { CIRCUIT_LEGS, type CircuitPlan } from '../../circuit/types.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { ftFromM, mFromFt, mFromNmi, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import type { ViewFrame } from '../frame.ts';
import type { Colours } from '../ink/colours.ts';
import type { Ink } from '../ink/ink.ts';
import { keyed } from '../ink/keyed.ts';
import type { TrailPiece } from '../trail.ts';
import { ProfileCamera } from './camera.ts';
import { FlownDistances } from './flown.ts';
import { drawSectorLetters, drawSectors } from './sectors.ts';
import { drawSideSilhouette } from './silhouette.ts';
import { distanceAlong, plannedHeightM, type Track, trackOf } from './track.ts';

/** The title's strip, and below it the row of leg names. */
const TITLE_PX = 26;
const TOP_PX = 48;
const BOTTOM_PX = 26;
const LEFT_PX = 14;
const RIGHT_PX = 52;
const AXIS_GLIDE_S = 0.8;
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
const AEROPLANE_PX = 46;
/** A distance this much larger than the next belongs to the circuit before. */
const ANEW_M = 600;
const TICKS_NMI = [0.1, 0.25, 0.5, 1] as const;
const MOST_TICKS = 40;
const HEIGHTS_FT = [100, 200, 500, 1000] as const;

const tickTexts = new Map<number, readonly string[]>();
/** Miles at the k-th tick of a step, all with as many decimals as the step. */
const tickText = (step: number, k: number): string => {
  let texts = tickTexts.get(step);
  if (texts === undefined) {
    texts = Array.from({ length: MOST_TICKS }, (_, i) => fixed(i * step, step === 0.25 ? 2 : 1));
    tickTexts.set(step, texts);
  }
  return texts[k] ?? '';
};
const feetTexts = new Map<number, string>();
const feetText = (ft: number): string => {
  let text = feetTexts.get(ft);
  if (text === undefined) {
    text = `${thousandsTo(ft, 1)} ft`;
    feetTexts.set(ft, text);
  }
  return text;
};
const captionText = keyed((approach: number, tenths: number) => {
  const what = approach === 1 ? 'distance to the threshold, NM' : 'the circuit unrolled, distance flown';
  return `${what} · heights drawn ${fixed(tenths / 10, 1)} times · pitch true`;
});
const heightText = keyed((tens: number) => `${thousandsTo(tens * 10, 1)} ft`);

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

  private look(frame: ViewFrame, track: Track, width: number, height: number): void {
    const sinceS = this.waitedS;
    this.waitedS = 0;
    const { camera } = this;
    const { snapshot } = frame;
    const approaching = APPROACH_LEGS.has(frame.leg) && this.aheadM > track.baseTurnM - 400;
    const glide = this.settled ? 1 - Math.exp(-sinceS / AXIS_GLIDE_S) : 1;
    this.approach += ((approaching ? 1 : 0) - this.approach) * glide;
    const w = this.approach;

    const beforeM = Math.max(0, track.thresholdM - this.aheadM);
    const planned = track.thresholdM - track.baseTurnM;
    const shownM = Math.max(SHORTEST_APPROACH_M, Math.min(Math.max(planned, beforeM), beforeM * 1.3 + 150));
    const wholeLeft = -160;
    const wholeRight = track.endM + 120;
    const nearLeft = track.thresholdM - shownM;
    const nearRight = Math.max(
      track.thresholdM + track.runway.specifiedM + 260,
      Math.min(this.aheadM + 120, track.thresholdM + track.runway.surfaceEndM + 60),
    );
    const wholeTop = Math.max(this.topOf(frame.plan), snapshot.heightM) * 1.22 + 12;
    const nearTop =
      Math.max(LOWEST_TOP_M, snapshot.heightM * 1.15, plannedHeightM(track, nearLeft) * 1.1 + 6) + 10;

    const left = wholeLeft + (nearLeft - wholeLeft) * w;
    const right = wholeRight + (nearRight - wholeRight) * w;
    const top = wholeTop + (nearTop - wholeTop) * w;
    const target = (width - LEFT_PX - RIGHT_PX) / (right - left);
    const targetHeight = (height - TOP_PX - BOTTOM_PX) / top;
    camera.leftM = left;
    camera.leftX = LEFT_PX;
    camera.pxPerM = target;
    camera.groundY = height - BOTTOM_PX;
    camera.pxPerHeightM = targetHeight;
    this.settled = true;
  }

  private topOf(plan: CircuitPlan): number {
    return plan.heightM;
  }

  draw(ink: Ink, colours: Colours, frame: ViewFrame, width: number, height: number): void {
    if (this.track === null || this.plan !== frame.plan || this.runway !== frame.runway) {
      this.track = trackOf(frame.plan, frame.runway);
      this.plan = frame.plan;
      this.runway = frame.runway;
      this.jump();
    }
    const { track, camera } = this;
    const { snapshot, runway } = frame;
    const pieces = frame.trail.pieces;
    const lastPiece = pieces.length - 1;
    const trailM = lastPiece >= 0 ? this.flown.lastOf(track, frame.trail, lastPiece) : Number.NaN;
    const from = Number.isFinite(trailM) ? trailM : this.aheadM;
    this.aheadM = distanceAlong(track, snapshot.eastM, snapshot.northM, snapshot.heightM, from);
    this.look(frame, track, width, height);
    const w = this.approach;
    const rightX = width - RIGHT_PX;

    camera.aim(ink);
    ink.use(colours.paper);
    ink.rect(0, 0, width, height);
    if (runway.lights !== null && w > 0.02)
      drawSectors(ink, colours, camera, track, runway.lights, LEFT_PX, TOP_PX, w);
    this.drawHeights(ink, colours, frame, width, w);
    this.drawCorridor(ink, colours, track);
    this.drawGround(ink, colours, track, runway, width, height);
    this.drawPoints(ink, colours, track, runway, w);
    this.drawTrail(ink, colours, frame, track);
    if (runway.lights !== null && w > 0.02)
      drawSectorLetters(ink, colours, camera, track, runway.lights, LEFT_PX, TOP_PX, w);
    this.drawHeldPath(ink, colours, snapshot, track, w);

    const { position } = frame.aeroplane.wing;
    if (frame.ghost !== null) {
      const ghost = frame.ghost;
      this.ghostM = distanceAlong(track, ghost.eastM, ghost.northM, ghost.heightM, this.ghostM);
      this.drawAeroplane(ink, colours, ghost, position, this.ghostM, colours.ghost);
    }
    this.drawAeroplane(ink, colours, snapshot, position, this.aheadM, colours.aeroplane);
    if (frame.picture === 'whiteboard') {
      const x = Math.min(rightX - 10, camera.x(this.aheadM));
      const wheelsY = camera.y(snapshot.heightM);
      const aboveY = wheelsY - AEROPLANE_PX * 0.5 - 12;
      const y = aboveY > TOP_PX + 4 ? aboveY : wheelsY + 18;
      const text = heightText(Math.round(ftFromM(snapshot.heightM) / 10));
      const half = ink.widthPx('strong', text) / 2;
      ink.use(colours.paper, 0.8);
      ink.rect(x - half - 4, y - 9, half * 2 + 8, 18);
      ink.use(colours.aeroplaneText);
      ink.text('strong', text, x, y, 'middle');
    }

    // The title's strip stays clear.
    ink.use(colours.paper);
    ink.rect(0, 0, width, TITLE_PX);
    this.drawLegNames(ink, colours, frame, track, rightX);
    ink.use(colours.inkSoft);
    const caption = captionText(w > 0.5 ? 1 : 0, Math.round(camera.exaggeration * 10));
    ink.text('small', caption, width - 12, 14, 'right');
  }

  private drawHeights(ink: Ink, colours: Colours, frame: ViewFrame, width: number, w: number): void {
    const { camera } = this;
    const topM = (camera.groundY - TOP_PX) / camera.pxPerHeightM;
    const topFt = ftFromM(topM);
    let step: number = HEIGHTS_FT[HEIGHTS_FT.length - 1] as number;
    for (let k = HEIGHTS_FT.length - 1; k >= 0; k -= 1)
      if (topFt / (HEIGHTS_FT[k] as number) <= 5) step = HEIGHTS_FT[k] as number;
    const shown = 1 - w;
    if (shown > 0.02)
      for (let ft = step; ft < topFt; ft += step) {
        const y = camera.y(mFromFt(ft));
        ink.use(colours.rule, 0.5 * shown);
        ink.dashed(LEFT_PX, y, width - RIGHT_PX, y, 1, 2, 5);
        ink.use(colours.inkSoft, shown);
        ink.text('small', feetText(ft), width - RIGHT_PX + 6, y);
      }
    if (w < 0.02) return;
    // From the lowest up; a text that would touch the one below is left out.
    let lastY = Infinity;
    for (let g = frame.gates.length - 1; g >= 0; g -= 1) {
      const gate = frame.gates[g];
      if (gate === undefined || gate.heightFt > topFt) continue;
      const y = camera.y(mFromFt(gate.heightFt));
      ink.use(colours.caution, 0.85 * w);
      ink.dashed(LEFT_PX, y, width - RIGHT_PX, y, 1.2, 7, 5);
      if (lastY - y < 12) continue;
      lastY = y;
      ink.use(colours.cautionText, w);
      ink.text('small', gate.text, width - RIGHT_PX + 6, y);
    }
  }

  private drawCorridor(ink: Ink, colours: Colours, track: Track): void {
    ink.use(colours.corridor, 0.17);
    ink.quads(track.corridor);
    ink.use(colours.corridor);
    ink.trace(track.line);
    ink.path(1.4);
  }

  private drawGround(
    ink: Ink,
    colours: Colours,
    track: Track,
    runway: Runway,
    width: number,
    height: number,
  ): void {
    const { camera } = this;
    const y = camera.groundY;
    ink.use(colours.paper);
    ink.rect(0, y, width, height - y);
    ink.use(colours.ink, 0.7);
    ink.line(LEFT_PX - 4, y, width - RIGHT_PX, y, 1.2);
    ink.use(colours[runway.surface]);
    this.strip(ink, -track.startAlongM, runway);
    this.strip(ink, track.thresholdM, runway);
    // Miles before the threshold, when there is room for them.
    const w = this.approach;
    if (w < 0.05) return;
    let step: number = TICKS_NMI[TICKS_NMI.length - 1] as number;
    for (let k = TICKS_NMI.length - 1; k >= 0; k -= 1)
      if (mFromNmi(TICKS_NMI[k] as number) * camera.pxPerM > 90) step = TICKS_NMI[k] as number;
    const farthest = nmiFromM(track.thresholdM - camera.leftM);
    for (let k = 0; k * step <= farthest && k < MOST_TICKS; k += 1) {
      const x = camera.x(track.thresholdM - mFromNmi(k * step));
      if (x < LEFT_PX) break;
      ink.use(colours.ink, 0.7 * w);
      ink.line(x, y, x, y + (k === 0 ? 9 : 6), 1.2);
      ink.use(colours.ink, w);
      ink.text('small', k === 0 ? 'threshold' : tickText(step, k), x, y + 16, k === 0 ? 'right' : 'middle');
    }
  }

  /** The runway as a bar, its threshold at a distance along the path. */
  private strip(ink: Ink, thresholdM: number, runway: Runway): void {
    const { camera } = this;
    const ax = camera.x(thresholdM + runway.surfaceStartM);
    const bx = camera.x(thresholdM + runway.surfaceEndM);
    const ay = camera.y(groundHeightM(runway, runway.surfaceStartM));
    const by = camera.y(groundHeightM(runway, runway.surfaceEndM));
    ink.move(ax, ay - 1);
    ink.to(bx, by - 1);
    ink.to(bx, by + 5);
    ink.to(ax, ay + 5);
    ink.fill();
  }

  /** Aim point, specified touchdown point and the slope to the aim point. */
  private drawPoints(ink: Ink, colours: Colours, track: Track, runway: Runway, w: number): void {
    if (w < 0.05) return;
    const { camera } = this;
    const aimX = camera.x(track.thresholdM + runway.aimM);
    const aimY = camera.y(groundHeightM(runway, runway.aimM));
    const spotX = camera.x(track.thresholdM + runway.specifiedM);
    const spotY = camera.y(groundHeightM(runway, runway.specifiedM));
    ink.use(colours.corridorText, w);
    ink.ring(aimX, aimY, 5, 1.8);
    ink.line(spotX, spotY + 6, spotX, spotY - 9, 1.8);
    ink.move(spotX, spotY - 9);
    ink.to(spotX + 8, spotY - 6);
    ink.to(spotX, spotY - 3);
    ink.fill();
    const room = spotX - aimX > ink.widthPx('small', 'aim point') + 18;
    ink.text('small', room ? 'aim point' : 'aim', aimX, camera.groundY + 16, 'middle');
    ink.text(
      'small',
      room ? 'touchdown point' : 'touchdown',
      spotX + (room ? 0 : 6),
      camera.groundY + 16,
      room ? 'middle' : 'left',
    );
  }

  /** Only the circuit being flown: back to where the distance last started anew. */
  private drawTrail(ink: Ink, colours: Colours, frame: ViewFrame, track: Track): void {
    const { camera } = this;
    const { pieces } = frame.trail;
    let firstPiece = 0;
    let firstPoint = 0;
    let newerM = this.aheadM;
    search: for (let p = pieces.length - 1; p >= 0; p -= 1) {
      const piece = pieces[p] as TrailPiece;
      const distances = this.flown.of(track, frame.trail, p);
      for (let i = piece.count - 1; i >= 0; i -= 1) {
        const distanceM = distances[i] as number;
        if (distanceM > newerM + ANEW_M) {
          firstPiece = i + 1 < piece.count ? p : p + 1;
          firstPoint = i + 1 < piece.count ? i + 1 : 0;
          break search;
        }
        newerM = distanceM;
      }
    }
    ink.lift();
    for (let p = firstPiece; p < pieces.length; p += 1) {
      const piece = pieces[p] as TrailPiece;
      const from = p === firstPiece ? firstPoint : 0;
      ink.tracePairs(this.flown.of(track, frame.trail, p), piece.heightM, piece.count, null, from);
    }
    ink.to(camera.x(this.aheadM), camera.y(frame.snapshot.heightM));
    ink.use(colours.aeroplane, 0.9);
    ink.path(2);
  }

  /** Where the flight path of this instant, held, meets the ground. */
  private drawHeldPath(
    ink: Ink,
    colours: Colours,
    snapshot: Readonly<Snapshot>,
    track: Track,
    w: number,
  ): void {
    if (w < 0.5 || snapshot.onGround || snapshot.verticalSpeedMps > -0.3 || snapshot.groundspeedMps < 5)
      return;
    const { camera } = this;
    const slope = snapshot.verticalSpeedMps / snapshot.groundspeedMps;
    const reachM = Math.min(snapshot.heightM / -slope, track.endM + 2000);
    const x = camera.x(this.aheadM + reachM);
    const y = camera.y(snapshot.heightM + slope * reachM);
    ink.use(colours.ink, 0.75);
    ink.dashed(camera.x(this.aheadM), camera.y(snapshot.heightM), x, y, 1.3, 6, 4);
    ink.line(x - 5, y - 5, x + 5, y + 5, 1.4);
    ink.line(x - 5, y + 5, x + 5, y - 5, 1.4);
  }

  private drawAeroplane(
    ink: Ink,
    colours: Colours,
    snapshot: Readonly<Snapshot>,
    wing: 'high' | 'low',
    distanceM: number,
    fill: number,
  ): void {
    const { camera } = this;
    ink.map[2] = camera.x(distanceM);
    ink.map[5] = camera.y(snapshot.heightM);
    drawSideSilhouette(
      ink,
      wing,
      snapshot.pitchRad,
      snapshot.flapRad,
      snapshot.gear,
      AEROPLANE_PX,
      fill,
      colours.ink,
      colours.paper,
    );
  }

  private drawLegNames(ink: Ink, colours: Colours, frame: ViewFrame, track: Track, rightX: number): void {
    const { camera } = this;
    for (const name of CIRCUIT_LEGS) {
      const { from, to } = frame.plan.legs[name];
      const fromX = camera.x(from.distanceM);
      const toX = camera.x(Math.min(to.distanceM, track.thresholdM));
      const ax = Math.max(LEFT_PX, fromX);
      const bx = Math.min(rightX, toX);
      const style = name === frame.leg ? 'strong' : 'label';
      if (bx - ax < ink.widthPx(style, name) + 8) continue;
      ink.use(name === frame.leg ? colours.corridorText : colours.inkSoft);
      ink.text(style, name, (ax + bx) / 2, TITLE_PX + 10, 'middle');
      ink.use(colours.rule, 0.8);
      if (fromX > LEFT_PX) ink.line(fromX, TITLE_PX + 4, fromX, TITLE_PX + 16, 1);
      if (toX < rightX) ink.line(toX, TITLE_PX + 4, toX, TITLE_PX + 16, 1);
    }
  }
}
