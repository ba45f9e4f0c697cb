import type { LightLetter } from '../aerodrome/slope-lights.ts';
import type { Colours } from './ink/colours.ts';
import type { Ink } from './ink/ink.ts';

/** Between two colours, channel by channel. */
export const blended = (from: number, to: number, share: number): number => {
  const channel = (shift: number) =>
    Math.round(((from >> shift) & 255) * (1 - share) + ((to >> shift) & 255) * share) << shift;
  return channel(16) | channel(8) | channel(0);
};

export const unitColour = (colours: Colours, letter: LightLetter, white: number): number => {
  if (letter === '-') return colours.lightDark;
  return blended(colours.lightRed, colours.lightWhite, white);
};

/** One unit of the slope lights, small. White is round and red is square: they differ by shape as by colour. */
export function drawUnitDot(
  ink: Ink,
  colours: Colours,
  x: number,
  y: number,
  radiusPx: number,
  letter: LightLetter,
  white: number,
): void {
  if (letter === '-') {
    ink.use(colours.lightDark);
    ink.ring(x, y, radiusPx * 0.7, 1);
    return;
  }
  ink.use(unitColour(colours, letter, white));
  if (letter === 'R') {
    ink.rect(x - radiusPx, y - radiusPx, radiusPx * 2, radiusPx * 2);
    return;
  }
  ink.disc(x, y, radiusPx * 1.1);
  ink.use(colours.ink);
  ink.ring(x, y, radiusPx * 1.1, 1);
}
