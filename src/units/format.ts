/**
 * Numbers as text for panels, meters and files. Always the same characters, whatever the
 * machine's language: decimal point, comma between thousands, hyphen-minus, never "-0".
 */

/** What stands where there is no number. */
export const NO_VALUE = '--';

/** Fixed number of decimals: `fixed(-0.04, 1)` is `0.0`. Not a number or infinite: `--`. */
export function fixed(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const text = value.toFixed(decimals);
  return text.startsWith('-') && Number(text) === 0 ? text.slice(1) : text;
}

/** Fixed decimals with an explicit sign in front: `+3`, `-12`, and `0` alone. */
export function signed(value: number, decimals = 0): string {
  const text = fixed(value, decimals);
  return Number(text) > 0 ? `+${text}` : text;
}

/** Whole number with a comma between thousands: `2,300`. */
export function thousands(value: number): string {
  const text = fixed(value);
  return text.replace(/\B(?=(\d{3})+$)/g, ',');
}

/** Rounded to the nearest step and written with commas: height to 10 ft, rpm to 10. */
export function thousandsTo(value: number, step: number): string {
  return thousands(Math.round(value / step) * step);
}

/** A heading in degrees as three digits, 001 to 360: `005`, and `360` for north. */
export function headingDigits(deg: number): string {
  if (!Number.isFinite(deg)) return '---';
  const rounded = Math.round(deg);
  const within = rounded - 360 * Math.floor(rounded / 360);
  return String(within === 0 ? 360 : within).padStart(3, '0');
}

/** Elapsed time as minutes and seconds, `07:05`; minutes go on past 59; the second has fully passed. */
export function clockText(timeS: number): string {
  if (!Number.isFinite(timeS)) return '--:--';
  const wholeS = Math.floor(Math.max(0, timeS));
  const minutes = Math.floor(wholeS / 60);
  return `${String(minutes).padStart(2, '0')}:${String(wholeS - 60 * minutes).padStart(2, '0')}`;
}
