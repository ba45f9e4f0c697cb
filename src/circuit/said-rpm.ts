import type { Aeroplane } from '../aeroplane/schema.ts';
import type { Steady } from '../simulation/performance/steady.ts';
import { rpmFromRevps } from '../units/conversions.ts';

/** Engine speed as it is said and set: to the next ten. Brief, card and coach all ask here. */
export const saidRpm = (revps: number): number => 10 * Math.round(rpmFromRevps(revps) / 10);

/** What is asked for on a leg: one's own card first, then the plan's steady flight. */
export const askedRpm = (
  { plan }: Aeroplane,
  leg: 'downwind' | 'base' | 'final',
  { revps }: Pick<Steady, 'revps'>,
): number => plan.cardRpm?.[leg] ?? saidRpm(revps);
