import type { GateFact } from '../../lesson/memory.ts';
import { degFromRad, ktFromMps } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Approach } from '../approach.ts';
import type { Future } from '../future.ts';
import type { Span } from './finders/span.ts';
import type { Change } from './result.ts';

const figures = (gate: GateFact): string => {
  const offM = fixed(Math.abs(gate.centrelineM));
  const side = gate.centrelineM >= 0 ? 'right' : 'left';
  const across = offM === '0' ? 'on the centreline' : `${offM} m ${side} of the centreline`;
  return `${fixed(degFromRad(gate.slopeRad), 1)} degrees to the aim point, ${fixed(ktFromMps(gate.iasMps))} kt, ${across}`;
};

const gateAt = (
  gates: readonly GateFact[],
  circuit: number,
  heightFt: number,
  fromS: number,
): GateFact | null =>
  gates.find((gate) => gate.circuit === circuit && gate.heightFt === heightFt && gate.atS >= fromS) ?? null;

/** What was wrong at the gate, and what it is there with the change: both flown. */
export const whyOf = (
  span: Span,
  approach: Approach,
  future: Future,
  forkS: number,
  change: Change,
): string => `${flownWhy(span, approach, future, forkS)}${leastOf(change)}`;

/** The least that works is said first; the plan is more. */
const leastOf = ({ size, plannedSize, unit }: Change): string =>
  size === plannedSize
    ? ''
    : ` That is the least that works; as planned it would be ${fixed(plannedSize)} ${unit}.`;

/** Before and after, at the gate that was failed. */
export const flownWhy = (span: Span, approach: Approach, future: Future, forkS: number): string => {
  const bad = approach.firstBad;
  if (bad === null)
    return `Before: ${approach.faults.join('; ')}. Flown with the change, none of it happens.`;
  const before = `At ${bad.heightFt} ft you were not stabilised: ${bad.why.join('; ')}.`;
  const gate = gateAt(future.lesson.gates, span.circuit, bad.heightFt, forkS);
  return gate === null
    ? `${before} Flown with the change, the approach is stabilised at the last gate.`
    : `${before} Flown with the change: ${figures(gate)}, stabilised.`;
};

/** Where no single change would have done it. */
export const noneOf = (approach: Approach, lastMendS: number | null): string => {
  const wrong =
    approach.firstBad === null
      ? approach.faults.join('; ')
      : `At ${approach.firstBad.heightFt} ft: ${approach.firstBad.why.join('; ')}`;
  return lastMendS === null
    ? `${wrong}. No one thing that was done otherwise than planned makes the difference alone.`
    : `${wrong}. No one thing makes the difference alone; until ${fixed(lastMendS)} s it could still be brought inside the tolerances from where it was.`;
};
