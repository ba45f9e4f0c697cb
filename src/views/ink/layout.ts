/** A vertex: x, y, u, v, distance from the stroke's middle, its half width (device pixels), colour bytes, sheet. */
export const FLOATS_PER_VERTEX = 8;
export const BYTES_PER_VERTEX = 4 * FLOATS_PER_VERTEX;

/** Every shape is quads; a triangle repeats its last corner. */
export const VERTICES_PER_QUAD = 4;
export const INDICES_PER_QUAD = 6;
