import type { LegName } from '../../lesson/names.ts';
import type { Manner } from './manner.ts';
import type { Span } from './span.ts';

/** What can be changed, one thing at a time. */
const CHANGE_KINDS = [
  'turn',
  'bank',
  'drift',
  'height',
  'descent',
  'power',
  'speed',
  'flap',
  'trim',
] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** Units of a change; `whole` is all or nothing. */
export type ChangeUnit = 's' | 'deg' | 'ft' | 'rpm' | '%' | 'kt' | 'whole';

/**
 * One thing that was done otherwise than the model pilot would have done it in the same place: kept in the manner
 * when something else is tried, mended when it is tried itself.
 */
export interface Departure {
  readonly kind: ChangeKind;
  readonly leg: LegName;
  /** When the change would be made, and when the flight is forked for it: at or before. */
  readonly atS: number;
  readonly forkS: number;
  /** Whole units from what was done to what the model pilot does; above 0. */
  readonly size: number;
  readonly unit: ChangeUnit;
  /** + later, faster, higher, more; - the other way. */
  readonly sense: 1 | -1;
  /** False: kept, but ordered or no fault of its own, so nothing to suggest. */
  readonly suggests: boolean;
  /** The manner with all of it. */
  keep(manner: Manner): Manner;
  /** The manner with so many units of it mended. */
  mend(manner: Manner, units: number): Manner;
  /** "Turn base 7 s later." */
  say(units: number): string;
}

/** Looks for departures of one kind. */
export type Finder = (span: Span) => readonly Departure[];
