import type { LightLetter } from '../aerodrome/slope-lights.ts';
import { blended, type Colours } from './pen/colours.ts';
import type { Pen } from './pen/pen.ts';

export const unitColour = (colours: Colours, letter: LightLetter, white: number): number => {
  if (letter === '-') return colours.lightDark;
  return blended(colours.lightRed, colours.lightWhite, white);
};

/** One unit of the slope lights, small. White is round and red is square: they differ by shape as by colour. */
export function drawUnitDot(
  pen: Pen,
  colours: Colours,
  x: number,
  y: number,
  radiusPx: number,
  letter: LightLetter,
  white: number,
): void {
  if (letter === '-') {
    pen.use(colours.lightDark);
    pen.ring(x, y, radiusPx * 0.7, 1);
    return;
  }
  pen.use(unitColour(colours, letter, white));
  if (letter === 'R') {
    pen.rect(x - radiusPx, y - radiusPx, radiusPx * 2, radiusPx * 2);
    return;
  }
  pen.disc(x, y, radiusPx * 1.1);
  pen.use(colours.ink);
  pen.ring(x, y, radiusPx * 1.1, 1);
}
