import { colourNumber, type Palette, type PaletteColour } from '../palette.ts';

/** The palette as the pen takes it. */
export type Colours = Readonly<Record<PaletteColour, number>>;

export const coloursOf = (palette: Palette): Colours =>
  Object.fromEntries(Object.entries(palette).map(([name, hex]) => [name, colourNumber(hex)])) as Colours;

export const clampedAlpha = (alpha: number): number => Math.max(0, Math.min(1, alpha));

/** A colour as the graphics card takes it: bytes r, g, b, a, lowest first, multiplied by alpha. */
export const packedColour = (rgb: number, alpha: number): number => {
  const r = Math.round(((rgb >> 16) & 255) * alpha);
  const g = Math.round(((rgb >> 8) & 255) * alpha);
  const b = Math.round((rgb & 255) * alpha);
  return (Math.round(alpha * 255) << 24) | (b << 16) | (g << 8) | r;
};

/** Between two colours, channel by channel. */
export const blended = (from: number, to: number, share: number): number => {
  const channel = (shift: number) =>
    Math.round(((from >> shift) & 255) * (1 - share) + ((to >> shift) & 255) * share) << shift;
  return channel(16) | channel(8) | channel(0);
};
