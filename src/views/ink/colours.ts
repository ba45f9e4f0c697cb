import { colourNumber, type Palette, type PaletteColour } from '../palette.ts';

/** The palette as the ink takes it. */
export type Colours = Readonly<Record<PaletteColour, number>>;

export const coloursOf = (palette: Palette): Colours =>
  Object.fromEntries(Object.entries(palette).map(([name, hex]) => [name, colourNumber(hex)])) as Colours;
