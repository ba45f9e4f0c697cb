import { describe, expect, it } from 'vitest';
import type { Glyphs } from '../../../src/views/ink/glyphs.ts';
import { Ink } from '../../../src/views/ink/ink.ts';
import { keyed } from '../../../src/views/ink/keyed.ts';
import { FLOATS_PER_VERTEX } from '../../../src/views/ink/layout.ts';
import { pack } from '../../../src/views/ink/run.ts';

/** Letters without a browser: every one a box of 6 by 8. */
const LETTER = { u0: 0, v0: 0, u1: 1, v1: 1, leftPx: 0, topPx: -8, widthPx: 6, heightPx: 8, advancePx: 7 };
const letters = {
  pixelRatio: 1,
  whiteU: 0.5,
  whiteV: 0.5,
  glyph: () => LETTER,
  widthPx: (_: string, text: string) => 7 * text.length,
} as unknown as Glyphs;

const vertices = (ink: Ink): { x: number; y: number }[] =>
  Array.from({ length: ink.count }, (_, i) => ({
    x: ink.floats[i * FLOATS_PER_VERTEX]!,
    y: ink.floats[i * FLOATS_PER_VERTEX + 1]!,
  }));

describe('the pen', () => {
  it('packs a colour as bytes r, g, b, a multiplied by alpha, lowest first', () => {
    const words = new Uint32Array(2);
    pack(0xff8000, 1, words, 0);
    pack(0xff8000, 0.5, words, 1);
    expect([...words].map((word) => word.toString(16))).toEqual(['ff0080ff', '80004080']);
  });

  it('makes a line of width 2 a quad one soft pixel wider on each side', () => {
    const ink = new Ink(letters);
    ink.line(0, 0, 10, 0, 2);
    expect(vertices(ink).map(({ y }) => y)).toEqual([2, 2, -2, -2]);
  });

  it('keeps the corner of a translucent path whole: both strokes share the mitre', () => {
    const ink = new Ink(letters);
    ink.move(0, 0);
    ink.to(10, 0);
    ink.to(10, 10);
    ink.path(2);
    const all = vertices(ink);
    expect(all).toHaveLength(8);
    // Outer corner of a right angle: reach 2 on both sides of both strokes.
    expect(all[2]!.x).toBeCloseTo(12, 5);
    expect(all[2]!.y).toBeCloseTo(-2, 5);
    expect(all[7]!.x).toBeCloseTo(12, 5);
    expect(all[7]!.y).toBeCloseTo(-2, 5);
  });

  it('leaves out points that lie on one another', () => {
    const ink = new Ink(letters);
    ink.move(0, 0);
    ink.to(0.05, 0);
    ink.to(10, 0);
    ink.path(1);
    expect(ink.count).toBe(4);
  });

  it('carries dashes on round a bend', () => {
    const ink = new Ink(letters);
    ink.move(0, 0);
    ink.to(6, 0);
    ink.to(6, 6);
    // Dashes 4, gaps 4 over 12: 0-4 on the first side, 8-12 on the second.
    ink.dashedPath(1, 4, 4);
    const all = vertices(ink);
    expect(all).toHaveLength(8);
    expect(Math.min(...all.slice(4).map(({ y }) => y))).toBeCloseTo(2, 5);
  });

  it('grows when a frame needs more room than there was', () => {
    const ink = new Ink(letters, 16);
    for (let i = 0; i < 50; i += 1) ink.line(0, i, 10, i, 1);
    expect(ink.count).toBe(200);
    expect(vertices(ink).at(-4)!.x).toBe(0);
    expect(vertices(ink).at(-4)!.y).toBeGreaterThan(49);
  });

  it('maps points as a camera says', () => {
    const ink = new Ink(letters);
    ink.map.set([2, 0, 100, 0, -2, 50]);
    ink.triangles([0, 0, 10, 0, 10, 10], [0, 1, 2]);
    expect(vertices(ink).slice(0, 3)).toEqual([
      { x: 100, y: 50 },
      { x: 120, y: 50 },
      { x: 120, y: 30 },
    ]);
  });

  it('centres type on its place', () => {
    const ink = new Ink(letters);
    ink.text('label', 'abcd', 100, 20, 'middle');
    expect(vertices(ink)[0]!.x).toBe(86);
  });
});

describe('keyed text', () => {
  it('is written again only when a number changes', () => {
    let written = 0;
    const text = keyed((deg: number) => {
      written += 1;
      return `${deg}°`;
    });
    expect([text(5), text(5), text(6)]).toEqual(['5°', '5°', '6°']);
    expect(written).toBe(2);
  });
});
