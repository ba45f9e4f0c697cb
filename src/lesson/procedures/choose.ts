import type { Procedures, Traffic } from '../../simulation/procedures.ts';
import type { Failure, LegStart } from '../../simulation/scenario.ts';
import { drawFor } from '../exercises/draw.ts';

/** What is asked for in words. */
export interface ProcedureChoice {
  readonly radio: Procedures['radio'];
  readonly words: Procedures['words'];
  /** How many others fly the circuit. */
  readonly others: 0 | 1 | 2;
  /** Something may wait behind a check: a subscale left elsewhere, brakes without pressure, a slow one ahead. */
  readonly surprises: boolean;
}

/** Where those ahead begin, the nearest first. */
const AHEAD: Readonly<Record<LegStart, readonly Traffic['from'][]>> = {
  'line-up': ['upwind', 'downwind'],
  upwind: ['crosswind', 'base'],
  crosswind: ['downwind', 'final'],
  downwind: ['base', 'final'],
  base: ['final'],
  final: [],
};

const QUICK_S = [18, 32] as const; // our choice: soon enough to be met on the leg
const SLOW_S = 150; // our choice: enough to be noticed
const MOST_OFF_HPA = 9; // our choice: enough to be noticed
const LEAST_OFF_HPA = 4; // our choice: enough to be noticed

/**
 * The procedures of one flight, every figure drawn from its seed, and the failures that belong to them. The same
 * seed gives the same surprises.
 */
export const chooseProcedures = (
  choice: ProcedureChoice,
  seed: number,
  qnhHpa: number,
  start: LegStart,
): { readonly procedures: Procedures; readonly failures: readonly Failure[] } => {
  const draw = drawFor(seed, 'procedures');
  const happens = (name: string, share: number): boolean => choice.surprises && draw.share(name) < share;
  const qnh = Math.round(qnhHpa);
  const offHpa = Math.round(draw.of('subscale-off', [LEAST_OFF_HPA, MOST_OFF_HPA]));
  const left = happens('subscale', 0.5) ? qnh + draw.sign('subscale-side') * offHpa : qnh;
  const traffic = AHEAD[start].slice(0, choice.others).map((from, i) => ({
    from,
    vacatesS: happens(`slow-${i}`, 0.4) ? SLOW_S : Math.round(draw.of(`vacates-${i}`, [...QUICK_S])),
  }));
  // Once airborne: on the ground the take-off would simply not be flown
  const brakes: Failure[] = happens('brakes', 0.35)
    ? [{ atS: 0, what: 'brakes', amount: 0.5, aboveFt: 50 }]
    : [];
  return {
    procedures: {
      radio: choice.radio,
      words: choice.words,
      subscaleHpa: Math.min(1090, Math.max(850, left)),
      traffic,
    },
    failures: brakes,
  };
};
