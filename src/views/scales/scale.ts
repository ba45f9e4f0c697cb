import type { Runway } from '../../aerodrome/runway.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { Weather } from '../../simulation/scenario.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { PaletteColour } from '../palette.ts';

/** What a scale may know beside the snapshot; fixed during a flight. */
export interface ScaleSetting {
  readonly aeroplane: Aeroplane;
  readonly runway: Runway;
  readonly weather: Weather;
}

/** A coloured part of a ribbon, in the scale's unit. Bands of one ribbon lie in rows: 0 across, 1 upper, 2 lower. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly colour: PaletteColour;
  readonly row: 'whole' | 'upper' | 'lower';
  /** Said and shown on demand, for instance "flap operating range". */
  readonly means: string;
}

export interface Tick {
  readonly at: number;
  /** Empty: a line without a number. */
  readonly text: string;
}

/** A line across the ribbon with a meaning, for instance a limit. */
export interface Mark {
  readonly at: number;
  readonly colour: PaletteColour;
  readonly means: string;
}

/**
 * One value beside the views. The page draws it as a `role="meter"` with a plain horizontal ribbon: a pointer
 * moved by a CSS transform to `fraction`, never through React; meters without ribbon have `low === high`.
 */
export interface Scale {
  readonly id: string;
  readonly name: string;
  /** In the text and in `aria-valuetext`; empty where words stand. */
  readonly unit: string;
  /** A cockpit has it: it stays in the cockpit picture. */
  readonly inCockpit: boolean;
  readonly ribbon: boolean;
  /** Whether this aeroplane has it. */
  aboard(setting: ScaleSetting): boolean;
  /** Ends of the ribbon, and of aria-valuemin and -max. */
  low(setting: ScaleSetting): number;
  high(setting: ScaleSetting): number;
  /** Name with what belongs to it, for instance "Altitude, QNH 1014". */
  title(setting: ScaleSetting): string;
  arcs(setting: ScaleSetting): readonly Arc[];
  ticks(setting: ScaleSetting): readonly Tick[];
  marks(setting: ScaleSetting): readonly Mark[];
  /** In the scale's unit, for aria-valuenow and the pointer. */
  value(snapshot: Readonly<Snapshot>, setting: ScaleSetting): number;
  /** As it is read out: "65 kt", "light pull". */
  text(value: number, setting: ScaleSetting): string;
}
