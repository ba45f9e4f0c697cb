import { firstLookAt } from '../../flight/result-words.ts';
import type { FlownResult } from '../../formats/result.ts';
import { isAskedEnd } from '../../lesson/judge/report.ts';
import type { RootResult } from '../../study/root/result.ts';

/** What the debrief's box says: the first line, as on the card, and what stands under it. */
export interface DebriefWords {
  readonly first: string;
  readonly after: readonly string[];
}

const wentWrong = ({ outcome, safety, items }: FlownResult): boolean =>
  safety.length > 0 ||
  items.some((item) => item.band === 'red' || item.band === 'amber') ||
  !isAskedEnd(outcome, ['stopped']);

/** Nobody is asked how final looked who came down to no gate. */
export const asksOwnView = ({ gates }: Pick<FlownResult, 'gates'>): boolean => gates.length > 0;

/** The first line and what follows, with what the search has found so far: never praise over what was outside. */
export const debriefWords = (report: FlownResult, root: RootResult | null): DebriefWords => {
  const first = firstLookAt(report);
  if (root === null || root.kind === 'not-searched') return { first, after: [] };
  if (root.kind === 'nothing-wrong' && wentWrong(report))
    return { first, after: ['At the gates the approach was stabilised.'] };
  const after = [root.sentence, root.why, root.afterGate?.sentence ?? ''];
  return { first, after: after.filter((words) => words !== '') };
};
