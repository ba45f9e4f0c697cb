import type { RunwayLights } from '../../aerodrome/runway.ts';
import type { Colours } from '../pen/colours.ts';
import type { Pen } from '../pen/pen.ts';
import type { ProfileCamera } from './camera.ts';
import type { Track } from './track.ts';

/** Tint of a sector by its share of reds. */
const RED_ALPHA = 0.2;
const WHITE_ALPHA = 0.55;

const lettersByReds = new Map<number, readonly string[]>();
/** "WWRR" as seen from the approach with the units at the left: whites outside, reds at the runway. */
const lettersOf = (units: number, reds: number): string => {
  let all = lettersByReds.get(units);
  if (all === undefined) {
    all = Array.from({ length: units + 1 }, (_, r) => 'W '.repeat(units - r) + 'R '.repeat(r)).map((t) =>
      t.trim(),
    );
    lettersByReds.set(units, all);
  }
  return all[reds] as string;
};

/** Set angles from the lowest up; kept per installation. */
const sortedAngles = new WeakMap<RunwayLights, readonly number[]>();
const anglesOf = (lights: RunwayLights): readonly number[] => {
  let angles = sortedAngles.get(lights);
  if (angles === undefined) {
    angles = [...lights.unitsAngleRad].sort((a, b) => a - b);
    sortedAngles.set(lights, angles);
  }
  return angles;
};

const wedge = (pen: Pen, ox: number, oy: number, ex: number, lowY: number, highY: number): void => {
  pen.move(ox, oy);
  pen.to(ex, lowY);
  pen.to(ex, highY);
  pen.fill();
};

/**
 * What the slope lights show at every distance and height before them, as wedges from the lights themselves:
 * red tint for reds, white for whites, lines at the units' set angles, and the letters at the left edge.
 */
export function drawSectors(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  lights: RunwayLights,
  leftX: number,
  topY: number,
  weight: number,
): void {
  const originM = track.thresholdM + lights.alongM;
  const ox = camera.x(originM);
  const oy = camera.y(lights.heightM);
  const reachM = Math.min(lights.rangeM, originM - camera.leftM - (leftX - camera.leftX) / camera.pxPerM);
  if (reachM < 30) return;
  const ex = camera.x(originM - reachM);
  const angles = anglesOf(lights);
  const units = angles.length;
  const yAt = (angleRad: number) => camera.y(lights.heightM + reachM * Math.tan(angleRad));
  const ground = camera.y(lights.heightM);
  for (let i = 0; i <= units; i += 1) {
    const reds = units - i;
    const lowY = i === 0 ? ground : yAt(angles[i - 1] as number);
    const highY = i === units ? Math.min(topY, yAt(angles[units - 1] as number)) : yAt(angles[i] as number);
    if (reds > 0) {
      pen.use(colours.lightRed, RED_ALPHA * weight * (reds / units));
      wedge(pen, ox, oy, ex, lowY, highY);
    }
    if (reds < units) {
      pen.use(colours.lightWhite, WHITE_ALPHA * weight * (1 - reds / units) * 0.5);
      wedge(pen, ox, oy, ex, lowY, highY);
    }
  }
  for (let i = 0; i < units; i += 1) {
    const middle = i === units / 2 - 1 || i === units / 2;
    pen.use(i < units / 2 ? colours.lightRed : colours.inkSoft, (middle ? 0.9 : 0.45) * weight);
    pen.line(ox, oy, ex, yAt(angles[i] as number), middle ? 1.3 : 1);
  }
}

/** The letters of each sector at the left edge, where there is room for them. */
export function drawSectorLetters(
  pen: Pen,
  colours: Colours,
  camera: ProfileCamera,
  track: Track,
  lights: RunwayLights,
  leftX: number,
  topY: number,
  weight: number,
): void {
  const originM = track.thresholdM + lights.alongM;
  const inM = (leftX + 30 - camera.leftX) / camera.pxPerM;
  const reachM = Math.min(lights.rangeM, originM - camera.leftM - inM);
  if (reachM < 30) return;
  const x = Math.max(leftX + 4, camera.x(originM - reachM) - 26);
  const angles = anglesOf(lights);
  const units = angles.length;
  const yAt = (angleRad: number) => camera.y(lights.heightM + reachM * Math.tan(angleRad));
  for (let i = 0; i <= units; i += 1) {
    const low = i === 0 ? camera.groundY : yAt(angles[i - 1] as number);
    const high = i === units ? low - 34 : yAt(angles[i] as number);
    const y = i === 0 ? low - (low - high) * 0.6 : (low + high) / 2;
    // The sector on the slope always has its letters, the others where there is room.
    if ((low - high < 13 && i !== units / 2) || y < topY + 4) continue;
    const text = lettersOf(units, units - i);
    pen.use(colours.paper, 0.7 * weight);
    pen.rect(x - 3, y - 7, pen.widthPx('small', text) + 6, 14);
    pen.use(colours.ink, weight);
    pen.text('small', text, x, y);
  }
}
