/** Tables of measured points with straight lines between them. */

/**
 * Value at x of the polyline through (xs[i], ys[i]), held level beyond both ends.
 * `xs` must rise and both lists must be equally long and not empty: whoever parses a table checks that.
 */
export function lookup(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let i = 1;
  while (x > xs[i]!) i++;
  const x0 = xs[i - 1]!;
  const y0 = ys[i - 1]!;
  return y0 + ((ys[i]! - y0) * (x - x0)) / (xs[i]! - x0);
}
