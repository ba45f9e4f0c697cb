/**
 * What a wing feels of vertical gusts: their mean over the span (the lift taken as even along it). Eddies smaller
 * than the wing cancel. Two points r apart feel gusts correlated as (1 - r/2L) e^(-r/L), across as well as along
 * (isotropic, as the spectra of MIL-F-8785C are); averaging that twice over the span b (Diederich 1957, NACA
 * TN 3910; Liepmann 1952, J. Aeron. Sci. 19, 793) leaves, with B = b/L,
 *
 *   variance                       F = (1 - e^-B) / B
 *   density at zero frequency      S = 4/B^2 - 2 K2(B)
 *
 * of a point's: exact. The averaged spectrum is not rational. It is made by the point's own filter with another
 * length L' and other weights of a and b: the variance F stays exact, and
 *
 *   L' = L (1 + 0.525 (1 - e^-B)),   density at zero over variance = L' / (1 + (B/5)^1.5)
 *
 * are our fit. Against the exact spectrum, to B = 15 (a low wing on the ground): within 1 dB up to frequency
 * 1/L, within 1.3 dB up to 3/L; above that, where a seventh of the power is, up to 4 dB too strong. B = 0 is the
 * point. Near the ground L is the height, and F goes to height over span: nothing at the wall.
 */
import { expInPlace } from '../maths/functions.ts';

/** Places of what `laySpan` lays: length over a point's, and the weights of a and b. */
export const LENGTHENED = 0; // definition: a place
export const WEIGHT_A = 1; // definition: a place
export const WEIGHT_B = 2; // definition: a place

/** Of an array of one. */
const ONLY = 0; // definition: a place
const left = new Float64Array(1);

/** What a span of so many lengths makes of the filter. */
export function laySpan(spans: number, out: Float64Array): void {
  left[ONLY] = -spans;
  expInPlace(left, ONLY);
  const gone = 1 - left[ONLY]!;
  const variance = spans > 0 ? gone / spans : 1;
  const fifth = 0.2 * spans;
  const atZero = 1 / (1 + fifth * Math.sqrt(fifth));
  const a = Math.sqrt(variance * (4 - atZero));
  out[LENGTHENED] = 1 + 0.525 * gone;
  out[WEIGHT_A] = a;
  out[WEIGHT_B] = Math.sqrt(variance * atZero) - a;
}
