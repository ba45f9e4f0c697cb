import { byHarm, causeOf } from './cause-of.ts';
import { ledTo } from './chain.ts';
import type { Finding } from './finding.ts';
import { findingsOf, type Looked } from './findings.ts';

/** One fault, and what came of it. */
export interface Fault {
  readonly fault: Finding;
  readonly under: readonly Finding[];
}

/** Everything red, each fault once, the worst first, with its consequences under it. */
export const faultsOf = (result: Looked): readonly Fault[] => {
  let left = findingsOf(result)
    .filter(({ band }) => band === 'red')
    .sort(byHarm);
  const faults: Fault[] = [];
  for (let worst = left[0]; worst !== undefined; worst = left[0]) {
    const fault = causeOf(worst, left) ?? worst;
    const under = left.filter((finding) => finding !== fault && ledTo(fault, finding));
    faults.push({ fault, under });
    left = left.filter((finding) => finding !== fault && !under.includes(finding));
  }
  return faults;
};

const clause = ({ short, says }: Finding): string => (short === '' ? says.replace(/\.$/, '') : short);

/** "You turned base late: ... With it: you came low under four reds; ..." */
export const faultWords = ({ fault, under }: Fault): string => {
  const others = [...new Set(under.map(clause))].join('; ');
  return [fault.says, fault.next, others === '' ? '' : `With it: ${others}.`]
    .filter((part) => part !== '')
    .join(' ');
};
