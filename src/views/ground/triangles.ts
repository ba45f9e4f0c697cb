/** A closed outline on the ground, x and y by turns; the last corner is not repeated. */
export type Outline = readonly number[];

/** Twice the signed area; positive when the corners run anticlockwise (x right, y up). */
export function twiceArea(outline: Outline): number {
  let sum = 0;
  const n = outline.length / 2;
  for (let i = 0; i < n; i += 1) {
    const j = (i + 1) % n;
    sum +=
      (outline[2 * i] as number) * (outline[2 * j + 1] as number) -
      (outline[2 * j] as number) * (outline[2 * i + 1] as number);
  }
  return sum;
}

/**
 * Cuts a simple outline (it may be concave, either way round) into triangles by clipping ears
 * (G. H. Meisters, "Polygons have ears", 1975). Corner indices, three by three. Fields have few corners, so the
 * quadratic search is enough. An outline that crosses itself gives what could be cut before no ear was left.
 */
export function trianglesOf(outline: Outline): number[] {
  const n = outline.length / 2;
  const turn = twiceArea(outline) >= 0 ? 1 : -1;
  const left = Array.from({ length: n }, (_, i) => i);
  const triangles: number[] = [];
  const x = (i: number) => outline[2 * i] as number;
  const y = (i: number) => outline[2 * i + 1] as number;
  const side = (a: number, b: number, c: number) =>
    turn * ((x(b) - x(a)) * (y(c) - y(a)) - (x(c) - x(a)) * (y(b) - y(a)));
  const isEar = (a: number, b: number, c: number) =>
    side(a, b, c) > 0 &&
    left.every(
      (p) => p === a || p === b || p === c || side(a, b, p) < 0 || side(b, c, p) < 0 || side(c, a, p) < 0,
    );
  while (left.length > 3) {
    const m = left.length;
    const ear = left.findIndex((b, i) =>
      isEar(left[(i + m - 1) % m] as number, b, left[(i + 1) % m] as number),
    );
    if (ear < 0) return triangles;
    triangles.push(left[(ear + m - 1) % m] as number, left[ear] as number, left[(ear + 1) % m] as number);
    left.splice(ear, 1);
  }
  if (left.length === 3) triangles.push(...left);
  return triangles;
}
