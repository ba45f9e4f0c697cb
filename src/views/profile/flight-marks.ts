import type { Snapshot } from '../../simulation/snapshot.ts';
import { ftFromM } from '../../units/conversions.ts';
import { thousands } from '../../units/format.ts';
import type { Colours } from '../pen/colours.ts';
import { keyed } from '../pen/keyed.ts';
import type { Pen } from '../pen/pen.ts';
import type { Trail, TrailPiece } from '../trail.ts';
import type { ProfileCamera } from './camera.ts';
import type { FlownDistances } from './flown.ts';
import { AEROPLANE_PX, TOP_PX } from './frame.ts';
import { drawSideSilhouette } from './silhouette.ts';
import type { Track } from './track.ts';

/** A distance this much larger than the next belongs to the circuit before. */
const ANEW_M = 600;

const heightText = keyed((tens: number) => `${thousands(tens * 10)} ft`);

/** Heights flown in the circuit being flown: back to where the distance last started anew. */
export function drawFlownHeights(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  trail: Trail,
  flown: FlownDistances,
  tip: Readonly<Snapshot>,
  tipM: number,
): void {
  const { pieces } = trail;
  let firstPiece = 0;
  let firstPoint = 0;
  let newerM = tipM;
  search: for (let p = pieces.length - 1; p >= 0; p -= 1) {
    const { count } = pieces[p] as TrailPiece;
    const distances = flown.of(track, trail, p);
    for (let i = count - 1; i >= 0; i -= 1) {
      const distanceM = distances[i] as number;
      if (distanceM > newerM + ANEW_M) {
        firstPiece = i + 1 < count ? p : p + 1;
        firstPoint = i + 1 < count ? i + 1 : 0;
        break search;
      }
      newerM = distanceM;
    }
  }
  pen.lift();
  for (let p = firstPiece; p < pieces.length; p += 1) {
    const { heightM, count } = pieces[p] as TrailPiece;
    pen.tracePairs(flown.of(track, trail, p), heightM, count, null, p === firstPiece ? firstPoint : 0);
  }
  pen.to(camera.x(tipM), camera.y(tip.heightM));
  pen.use(colours.aeroplane, 0.9);
  pen.path(2);
}

/** Where the flight path of this instant, held, meets the ground; only coming down in the air. */
export function drawHeldPath(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  snapshot: Readonly<Snapshot>,
  distanceM: number,
  longestM: number,
): void {
  if (snapshot.onGround || snapshot.verticalSpeedMps > -0.3 || snapshot.groundspeedMps < 5) return;
  const slope = snapshot.verticalSpeedMps / snapshot.groundspeedMps;
  const reachM = Math.min(snapshot.heightM / -slope, longestM);
  const x = camera.x(distanceM + reachM);
  const y = camera.y(snapshot.heightM + slope * reachM);
  pen.use(colours.ink, 0.75);
  pen.dashed(camera.x(distanceM), camera.y(snapshot.heightM), x, y, 1.3, 6, 4);
  pen.line(x - 5, y - 5, x + 5, y + 5, 1.4);
  pen.line(x - 5, y + 5, x + 5, y - 5, 1.4);
}

/** The aeroplane from the side, its wheels at its height. */
export function drawAeroplane(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  snapshot: Readonly<Snapshot>,
  wing: 'high' | 'low',
  distanceM: number,
  fill: number,
): void {
  pen.map[2] = camera.x(distanceM);
  pen.map[5] = camera.y(snapshot.heightM);
  drawSideSilhouette(
    pen,
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

/** Its height above the threshold in words, above it or, under the names of the legs, below. */
export function drawHeightText(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  snapshot: Readonly<Snapshot>,
  distanceM: number,
  rightX: number,
): void {
  const x = Math.min(rightX - 10, camera.x(distanceM));
  const wheelsY = camera.y(snapshot.heightM);
  const aboveY = wheelsY - AEROPLANE_PX * 0.5 - 12;
  const y = aboveY > TOP_PX + 4 ? aboveY : wheelsY + 18;
  const text = heightText(Math.round(ftFromM(snapshot.heightM) / 10));
  const half = pen.widthPx('strong', text) / 2;
  pen.use(colours.paper, 0.8);
  pen.rect(x - half - 4, y - 9, half * 2 + 8, 18);
  pen.use(colours.aeroplaneText);
  pen.text('strong', text, x, y, 'middle');
}
