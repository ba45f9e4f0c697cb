import type { Exercise } from '../exercises/exercise.ts';
import { faultsOf, faultWords } from './first/faults.ts';
import { isAskedEnd, type Outcome, type Report } from './report.ts';

/** Whether the exercise was done, and what stood against it: each fault once, the worst first, a few sentences each. */
export interface Verdict {
  readonly passed: boolean;
  readonly against: readonly string[];
}

/** Ended as it may, without a safety stop, and nothing that was looked at red. */
export const verdictOf = (
  exercise: Pick<Exercise, 'success'>,
  outcome: Outcome,
  why: string,
  report: Report,
): Verdict => {
  const asked = isAskedEnd(outcome, exercise.success);
  const faults = faultsOf({ ...report, outcome: asked ? 'stopped' : outcome });
  const ended = faults.some(({ fault, under }) =>
    [fault, ...under].some(({ key }) => key.startsWith('ended')),
  );
  const against = [
    ...(asked || ended ? [] : [`the flight ended otherwise: ${why}`]),
    ...new Set(faults.map(faultWords)),
  ];
  const passed = asked && report.safety.length === 0 && report.items.every(({ band }) => band !== 'red');
  return { passed, against };
};
