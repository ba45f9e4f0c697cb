import { describe, expect, it } from 'vitest';
import { BatchPen, COLOUR_AT, WORDS_PER_VERTEX } from '../../../src/views/pen/batch-pen.ts';
import { packedColour } from '../../../src/views/pen/colours.ts';
import { keyed } from '../../../src/views/pen/keyed.ts';
import type { Texts } from '../../../src/views/pen/pen.ts';

/** Type without a browser: every letter 7 wide; what was put stands in `all`. */
const noTexts = () => {
  const all: { text: string; x: number; y: number; angle: number; halves: number }[] = [];
  const place = new Float64Array(5);
  const texts: Texts = {
    place,
    begin: () => {
      all.length = 0;
    },
    put: (_, text, __, halves) => all.push({ text, x: place[0]!, y: place[1]!, angle: place[2]!, halves }),
    end: () => undefined,
    widthPx: (_, text) => 7 * text.length,
  };
  return { texts, all };
};

const newPen = (capacity?: number) => new BatchPen(noTexts().texts, 1, capacity);

/** Corners of all quads, four by four. */
const corners = (pen: BatchPen): { x: number; y: number }[] =>
  Array.from({ length: 4 * pen.count }, (_, i) => ({
    x: pen.floats[i * WORDS_PER_VERTEX]!,
    y: pen.floats[i * WORDS_PER_VERTEX + 1]!,
  }));

describe('the pen', () => {
  it('packs a colour as bytes r, g, b, a multiplied by alpha, lowest first', () => {
    const words = Uint32Array.of(packedColour(0xff8000, 1), packedColour(0xff8000, 0.5));
    expect([...words].map((word) => word.toString(16))).toEqual(['ff0080ff', '80004080']);
  });

  it('makes a line of width 2 a quad one soft pixel wider on each side', () => {
    const pen = newPen();
    pen.line(0, 0, 10, 0, 2);
    expect(corners(pen).map(({ y }) => y)).toEqual([2, 2, -2, -2]);
  });

  it('keeps the corner of a translucent path whole: both strokes share the mitre', () => {
    const pen = newPen();
    pen.move(0, 0);
    pen.to(10, 0);
    pen.to(10, 10);
    pen.path(2);
    const all = corners(pen);
    expect(all).toHaveLength(8);
    // Outer corner of a right angle: reach 2 on both sides of both strokes.
    expect(all[2]!.x).toBeCloseTo(12, 5);
    expect(all[2]!.y).toBeCloseTo(-2, 5);
    expect(all[7]!.x).toBeCloseTo(12, 5);
    expect(all[7]!.y).toBeCloseTo(-2, 5);
  });

  it('leaves out points that lie on one another', () => {
    const pen = newPen();
    pen.move(0, 0);
    pen.to(0.05, 0);
    pen.to(10, 0);
    pen.path(1);
    expect(pen.count).toBe(1);
  });

  it('carries dashes on round a bend', () => {
    const pen = newPen();
    pen.move(0, 0);
    pen.to(6, 0);
    pen.to(6, 6);
    // Dashes 4, gaps 4 over 12: 0-4 on the first side, 8-12 on the second.
    pen.dashedPath(1, 4, 4);
    const all = corners(pen);
    expect(all).toHaveLength(8);
    expect(Math.min(...all.slice(4).map(({ y }) => y))).toBeCloseTo(2, 5);
  });

  it('grows when a frame needs more room than there was', () => {
    const pen = newPen(16);
    for (let i = 0; i < 50; i += 1) pen.line(0, i, 10, i, 1);
    expect(pen.count).toBe(50);
    expect(corners(pen).at(-4)!.x).toBe(0);
    expect(corners(pen).at(-4)!.y).toBeGreaterThan(49);
  });

  it('maps points as a camera says', () => {
    const pen = newPen();
    pen.map.set([2, 0, 100, 0, -2, 50]);
    pen.triangles([0, 0, 10, 0, 10, 10], [0, 1, 2]);
    expect(corners(pen).slice(0, 3)).toEqual([
      { x: 100, y: 50 },
      { x: 120, y: 50 },
      { x: 120, y: 30 },
    ]);
  });

  it('fades from one side of a strip to the other', () => {
    const pen = newPen();
    pen.use(0x102030);
    pen.move(0, 0);
    pen.to(10, 0);
    pen.to(10, 5);
    pen.to(0, 5);
    pen.fade(0x405060);
    const colours = [0, 1, 2, 3].map((i) => pen.words[i * WORDS_PER_VERTEX + COLOUR_AT]!.toString(16));
    expect(colours).toEqual(['ff302010', 'ff302010', 'ff605040', 'ff605040']);
  });

  it('tapers a stroke from one width to another', () => {
    const pen = newPen();
    pen.taper(0, 0, 10, 0, 4, 2);
    // Half the width and a pixel for the soft edge.
    expect(corners(pen).map(({ y }) => y)).toEqual([3, 2, -2, -3]);
  });

  it('hands type on with its place, and how much of it lies left of that', () => {
    const { texts, all } = noTexts();
    const pen = new BatchPen(texts, 1);
    pen.map.set([2, 0, 100, 0, -2, 50]);
    pen.text('label', 'abcd', 100, 20, 'middle');
    pen.textOn('small', 'on', Float64Array.of(0, 0, 10, 5), 2, -3);
    pen.turnedText('small', 'turned', 1, 2, 0.5);
    expect(all).toEqual([
      { text: 'abcd', x: 100, y: 20, angle: 0, halves: 1 },
      { text: 'on', x: 120, y: 37, angle: 0, halves: 1 },
      { text: 'turned', x: 1, y: 2, angle: 0.5, halves: 1 },
    ]);
    pen.begin();
    expect(all).toEqual([]);
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
