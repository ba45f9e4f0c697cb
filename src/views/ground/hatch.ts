import type { Outline } from './triangles.ts';

/**
 * Parallel lines inside an outline, as x1, y1, x2, y2 by fours: crossings of each line with the edges, sorted
 * and taken in pairs (even-odd rule). `angleRad` is the lines' direction from x towards y.
 */
export function hatch(outline: Outline, angleRad: number, spacing: number, insetShare = 0): number[] {
  const alongX = Math.cos(angleRad);
  const alongY = Math.sin(angleRad);
  const n = outline.length / 2;
  const across = (i: number) =>
    -(outline[2 * i] as number) * alongY + (outline[2 * i + 1] as number) * alongX;
  const along = (i: number) => (outline[2 * i] as number) * alongX + (outline[2 * i + 1] as number) * alongY;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < n; i += 1) {
    low = Math.min(low, across(i));
    high = Math.max(high, across(i));
  }
  const lines: number[] = [];
  for (let level = (Math.floor(low / spacing) + 0.5) * spacing; level < high; level += spacing) {
    const cuts: number[] = [];
    for (let i = 0; i < n; i += 1) {
      const j = (i + 1) % n;
      const a = across(i);
      const b = across(j);
      if (a < level === b < level) continue;
      cuts.push(along(i) + ((level - a) / (b - a)) * (along(j) - along(i)));
    }
    cuts.sort((p, q) => p - q);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const inset = insetShare * ((cuts[k + 1] as number) - (cuts[k] as number));
      const from = (cuts[k] as number) + inset;
      const to = (cuts[k + 1] as number) - inset;
      if (to > from)
        lines.push(
          from * alongX - level * alongY,
          from * alongY + level * alongX,
          to * alongX - level * alongY,
          to * alongY + level * alongX,
        );
    }
  }
  return lines;
}

/** Points spread over an outline on a staggered grid, x and y by turns: trees, houses. */
export function scatter(outline: Outline, spacing: number): number[] {
  const points: number[] = [];
  const lines = hatch(outline, 0, spacing);
  for (let k = 0; k < lines.length; k += 4) {
    const y = lines[k + 1] as number;
    const row = Math.round(y / spacing);
    const stagger = row % 2 === 0 ? 0 : spacing / 2;
    const from = Math.ceil(((lines[k] as number) + spacing * 0.3 - stagger) / spacing) * spacing + stagger;
    for (let x = from; x < (lines[k + 2] as number) - spacing * 0.3; x += spacing) {
      // A fixed irregularity, so that a wood does not look planted with a ruler.
      const wobble = Math.sin(x * 12.9898 + y * 78.233) * 0.22 * spacing;
      points.push(x + wobble, y - wobble * 0.7);
    }
  }
  return points;
}
