import type { Aerodrome } from '../../aerodrome/schema.ts';
import { degFromRad, nmiFromM } from '../../units/conversions.ts';
import type { PlanOptions } from '../types.ts';

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
