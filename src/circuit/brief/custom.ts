import type { Aerodrome } from '../../aerodrome/schema.ts';
import { degFromRad, nmiFromM } from '../../units/conversions.ts';
import type { PlanOptions } from '../types.ts';

/** How a school teaches the way down, where it is not as the aerodrome has it. */
export interface Taught {
  /** Abeam the threshold (FAA-H-8083-3C ch. 8), or level to the base turn (CASA, NZ and UK practice). */
  readonly descentFrom?: 'abeam' | 'base-turn';
  /** Height above the aerodrome at which the turn to final is complete. */
  readonly finalTurnDoneFt?: number;
}

/** The aerodrome with its way down as a school teaches it. */
export const asTaught = (aerodrome: Aerodrome, taught: Taught): Aerodrome => ({
  ...aerodrome,
  circuit: { ...aerodrome.circuit, ...taught },
});

const rounded = (x: number): number => Math.round(x * 1e4) / 1e4;

/**
 * The aerodrome with the circuit that was chosen for this flight as its custom, so that whatever plans from it
 * (the flight, its assessment, a replay elsewhere) plans the same. Banks and circuit height stay the aerodrome's.
 */
export function withCircuit(aerodrome: Aerodrome, options: PlanOptions): Aerodrome {
  const { spacingM, approachRad, descentFrom, finalFromAimM } = options;
  const circuit = {
    ...aerodrome.circuit,
    ...(spacingM !== undefined && { spacingNmi: rounded(nmiFromM(spacingM)) }),
    ...(approachRad !== undefined && { approachDeg: rounded(degFromRad(approachRad)) }),
    ...(descentFrom !== undefined && { descentFrom }),
    ...(finalFromAimM !== undefined && { finalFromAimNmi: rounded(nmiFromM(finalFromAimM)) }),
  };
  return { ...aerodrome, circuit };
}
