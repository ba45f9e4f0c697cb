/**
 * The colours of both themes, once: the views draw with them and the page sets them as CSS custom properties.
 * Warm paper and ink lines, one vermilion for the aeroplane and its trail, sea green for corridors, amber for
 * caution. Text colours keep WCAG 2.2 AA (4.5 to 1) on ground and paper, lines that carry meaning 3 to 1.
 */
const DAY_COLOURS = {
  /** Behind the panels. */
  ground: '#f4efe2',
  /** Of a panel. */
  paper: '#fbf8ef',
  /** Hairlines around panels. */
  rule: '#b9b2a0',
  ink: '#22303c',
  /** Second-rank text. */
  inkSoft: '#55606a',
  /** The aeroplane, its trail and pointer. */
  aeroplane: '#c8452d',
  /** Vermilion where it is text. */
  aeroplaneText: '#b23a24',
  /** Corridors and what is going well. */
  corridor: '#3f8f7d',
  corridorText: '#2b6f60',
  caution: '#b87514',
  cautionText: '#8a5300',
  danger: '#b3261e',
  /** A second aeroplane. */
  ghost: '#5b6f8c',
  /** Behind a scale's pointer. */
  trough: '#e8e0cd',
  focus: '#1f5f8b',
  sky: '#eef1ea',
  skyHigh: '#fbf8ef',
  land: '#e9e3cf',
  haze: '#f2eee1',
  field: '#d9d8b4',
  wood: '#8fa585',
  water: '#a9c4cc',
  village: '#c0a58e',
  road: '#c9bfa8',
  tarmac: '#5d656d',
  grass: '#b4bd92',
  /** Paint on the runway. */
  marking: '#fdfbf4',
  /** Cowling, wing and strut. */
  machine: '#d8d8d0',
  lightWhite: '#ffffff',
  lightRed: '#b3201d',
  /** Outside the beam. */
  lightDark: '#8b8f8f',
  arcWhite: '#ffffff',
  arcGreen: '#4c9a66',
  arcYellow: '#d9a227',
  arcRed: '#b3261e',
} as const;

export type PaletteColour = keyof typeof DAY_COLOURS;
export type Palette = Readonly<Record<PaletteColour, string>>;

export const DAY: Palette = DAY_COLOURS;

export const NIGHT: Palette = {
  ground: '#14191e',
  paper: '#1b2127',
  rule: '#4a5157',
  ink: '#ece5d4',
  inkSoft: '#aeb0a8',
  aeroplane: '#ee6f50',
  aeroplaneText: '#f58c70',
  corridor: '#4fa893',
  corridorText: '#74c4b0',
  caution: '#dca03c',
  cautionText: '#e8b45c',
  danger: '#f0776b',
  ghost: '#90a8c8',
  trough: '#2c343b',
  focus: '#7fbce6',
  sky: '#1d2730',
  skyHigh: '#1b2127',
  land: '#23291f',
  haze: '#262d2c',
  field: '#333a25',
  wood: '#2e4434',
  water: '#243f4b',
  village: '#4d4036',
  road: '#474337',
  tarmac: '#8a9096',
  grass: '#4b5738',
  marking: '#20262c',
  machine: '#323a41',
  lightWhite: '#fffdf5',
  lightRed: '#d8342c',
  lightDark: '#5b6166',
  arcWhite: '#f4efe2',
  arcGreen: '#4c9a66',
  arcYellow: '#d9a227',
  arcRed: '#f0776b',
};

export type Theme = 'day' | 'night';
export const PALETTES: Readonly<Record<Theme, Palette>> = { day: DAY, night: NIGHT };

/** The palette as CSS custom properties: `inkSoft` is `--ink-soft`. */
export const paletteVariables = (palette: Palette): readonly (readonly [string, string])[] =>
  (Object.keys(palette) as PaletteColour[]).map((name) => [
    `--${name.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`)}`,
    palette[name],
  ]);

/** "#rrggbb" as 0xrrggbb. */
export const colourNumber = (hex: string): number => Number.parseInt(hex.slice(1), 16);
