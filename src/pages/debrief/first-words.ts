import { firstLookAt } from '../../flight/result-words.ts';
import type { FlownResult } from '../../formats/result.ts';
import { isAskedEnd } from '../../lesson/judge/report.ts';
import type { RootResult } from '../../study/root/result.ts';

/** What the debrief's box says: the first line, and what stands under it. */
export interface DebriefWords {
  readonly first: string;
  readonly after: readonly string[];
}

const wentWrong = ({ outcome, safety, items }: FlownResult): boolean =>
  safety.length > 0 || items.some((item) => item.band === 'red') || !isAskedEnd(outcome, ['stopped']);

/** Up to the last gate all was well, and then it was not: the search has nothing to say of that. */
export const wentWrongAfterwards = (report: FlownResult, root: RootResult | null): boolean =>
  root?.kind === 'nothing-wrong' && wentWrong(report);

/** The first line and what follows, with what the search has found so far. */
export const debriefWords = (report: FlownResult, root: RootResult | null): DebriefWords => {
  const first = firstLookAt(report);
  if (root === null || root.kind === 'not-searched') return { first, after: [] };
  const after = [root.why, root.afterGate?.sentence ?? ''].filter((words) => words !== '');
  if (wentWrongAfterwards(report, root))
    return {
      first,
      after: ['What went wrong came after the last gate; before it nothing needs changing.', ...after],
    };
  return wentWrong(report) ? { first, after: [root.sentence, ...after] } : { first: root.sentence, after };
};
