import { describe, expect, it } from 'vitest';
import { PALETTES, type Palette, type PaletteColour, paletteVariables } from '../../../src/views/palette.ts';

/** Relative luminance and contrast ratio after WCAG 2.2, "relative luminance" and "contrast ratio". */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

const TEXTS: readonly PaletteColour[] = [
  'ink',
  'inkSoft',
  'aeroplaneText',
  'corridorText',
  'cautionText',
  'danger',
];
const LINES: readonly PaletteColour[] = ['aeroplane', 'corridor', 'caution', 'ghost', 'focus', 'ink'];

describe('the palettes', () => {
  it('use a contrast formula that gives 21 for black on white (WCAG 2.2)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  });

  for (const [theme, palette] of Object.entries(PALETTES) as [string, Palette][]) {
    for (const text of TEXTS)
      for (const ground of ['ground', 'paper'] as const)
        it(`keep ${text} readable on ${ground} by ${theme}: 4.5 to 1 (WCAG 2.2, 1.4.3)`, () => {
          expect(contrast(palette[text], palette[ground])).toBeGreaterThanOrEqual(4.5);
        });
    for (const line of LINES)
      it(`keep ${line} visible on paper by ${theme}: 3 to 1 (WCAG 2.2, 1.4.11)`, () => {
        expect(contrast(palette[line], palette.paper)).toBeGreaterThanOrEqual(3);
      });
  }

  it('become CSS custom properties with the same names in kebab case', () => {
    expect(paletteVariables(PALETTES.day)).toContainEqual(['--ink-soft', PALETTES.day.inkSoft]);
  });

  it('name the same colours by day and by night', () => {
    expect(Object.keys(PALETTES.night).sort()).toEqual(Object.keys(PALETTES.day).sort());
  });
});
