import type { Runway } from '../aerodrome/runway.ts';
import type { LightLetter } from '../aerodrome/slope-lights.ts';
import { degFromRad } from '../units/conversions.ts';
import { fixed } from '../units/format.ts';
import type { ViewFrame } from './frame.ts';
import type { Colours } from './pen/colours.ts';
import type { Pen } from './pen/pen.ts';
import { TYPE } from './pen/type.ts';
import { unitColour } from './units.ts';

const LARGEST_RADIUS_PX = 30;
const names = new Map<string, string>();
const nameOf = (kind: string, angleDeg: number): string => {
  const key = kind + angleDeg;
  let text = names.get(key);
  if (text === undefined) {
    text = `${kind} ${fixed(angleDeg, Number.isInteger(angleDeg) ? 0 : 1)}°`;
    names.set(key, text);
  }
  return text;
};

function drawUnit(
  pen: Pen,
  colours: Colours,
  letter: LightLetter,
  white: number,
  x: number,
  y: number,
  radius: number,
): void {
  if (letter === '-') {
    pen.use(colours.lightDark);
    pen.ring(x, y, radius, 1.6);
    pen.line(x - radius * 0.3, y, x + radius * 0.3, y, 2);
    return;
  }
  // Round when white, square when red, and in between on the way from one to the other.
  const corner = letter === 'W' ? radius : letter === 'R' ? radius * 0.22 : radius * (0.22 + 0.78 * white);
  pen.use(unitColour(colours, letter, white));
  pen.rounded(x - radius, y - radius, radius * 2, radius * 2, corner);
  pen.fill();
  pen.use(colours.ink);
  pen.path(1.6, true);
  const dark = white < 0.55;
  pen.use(dark ? 0xffffff : 0x22303c);
  pen.text('large', letter, x, y, 'middle', (radius * 0.92) / TYPE.large.sizePx);
}

/**
 * The slope lights as the eye sees them, large, in the order they stand from left to right on the approach.
 * White is a circle with W, red a square with R; a dark outline is outside the beam.
 */
export class LightsView {
  private runway: Runway | null = null;
  private readonly white = new Float64Array(4);

  /** Whether a unit has changed since this was asked last. */
  changed(frame: ViewFrame): boolean {
    const { lights, runway } = frame;
    let changed = runway !== this.runway;
    this.runway = runway;
    const units = lights?.units ?? 0;
    for (let i = 0; i < this.white.length; i += 1) {
      // A dark unit is told from a red one by a number of its own.
      const white = lights === null || i >= units || lights.letters[i] === '-' ? -1 : (lights.white[i] ?? 0);
      if (white === this.white[i]) continue;
      this.white[i] = white;
      changed = true;
    }
    return changed;
  }

  draw(pen: Pen, colours: Colours, frame: ViewFrame, width: number, height: number): void {
    pen.begin();
    pen.use(colours.paper);
    pen.rect(0, 0, width, height);
    pen.use(colours.ink);
    pen.text('strong', 'Slope lights', 12, height / 2 - 9);
    const { lights } = frame.runway;
    pen.use(colours.inkSoft);
    if (lights === null) {
      pen.text('label', 'no slope lights', 12, height / 2 + 10);
      pen.end();
      return;
    }
    pen.text('label', nameOf(lights.kind, degFromRad(lights.angleRad)), 12, height / 2 + 10);
    const n = lights.unitsAcrossM.length;
    const left = 104;
    const room = width - left - 12;
    const radius = Math.min(LARGEST_RADIUS_PX, height * 0.34, room / (n * 2.7));
    const step = Math.min(radius * 3.2, room / n);
    const middle = left + room / 2;
    const seen = frame.lights;
    for (let i = 0; i < n; i += 1) {
      // Units are counted from the outermost; on the right of the runway that is the rightmost.
      const place = lights.side === -1 ? i : n - 1 - i;
      const letter = seen === null || i >= seen.units ? '-' : (seen.letters[i] ?? '-');
      const x = middle + (place - (n - 1) / 2) * step;
      drawUnit(pen, colours, letter, seen?.white[i] ?? 0, x, height / 2, radius);
    }
    pen.end();
  }
}
