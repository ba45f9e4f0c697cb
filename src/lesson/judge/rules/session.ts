import { ftFromM } from '../../../units/conversions.ts';
import type { CircuitFacts } from '../../watch/facts.ts';
import { bandOf } from '../bands.ts';
import { type DocumentLimits, PRACTICE } from '../limit.ts';
import { around, type SessionRule } from '../rule.ts';
import { plain } from '../value-words.ts';

const IN_A_ROW = 3; // common practice: once is luck

/** A landing at the point, from an approach that nothing was wrong with. */
const isSound = (c: CircuitFacts, limits: DocumentLimits): boolean => {
  if (c.touchdown === null || c.touchdown.bounces > 0) return false;
  const { target, low, high } = around(0, limits.touchdownFt);
  const pastFt = ftFromM(c.touchdown.alongM - c.lesson.runway.specifiedM);
  const dues = c.m.dues.some((due) => due.circuit === c.circuit && due.ignored);
  return !dues && bandOf(pastFt, target, low, high) === 'green';
};

/** What several circuits show together. */
export const SESSION_RULES: readonly SessionRule[] = [
  {
    id: 'three-in-a-row',
    leg: 'landing-roll',
    name: 'sound landings in a row',
    measures: 'sound landings in a row, at most',
    unit: plain('in a row'),
    say: { low: 'One good landing is luck, three in a row are a habit: the same picture every time.' },
    trainedBy: 'touch-and-go-session',
    good: 4,
    bad: 0,
    measure: (circuits, limits) => {
      if (circuits.filter((c) => c.touchdown !== null).length < IN_A_ROW) return undefined;
      let run = 0;
      let most = 0;
      for (const circuit of circuits) {
        run = isSound(circuit, limits) ? run + 1 : 0;
        most = Math.max(most, run);
      }
      return most;
    },
    against: () => ({ target: IN_A_ROW, low: IN_A_ROW, high: null, source: `${PRACTICE}: three in a row` }),
  },
];
