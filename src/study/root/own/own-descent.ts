import { lookup } from '../../../maths/tables.ts';
import type { Briefing } from '../../../pilot/briefing/briefing.ts';

/** The planned descent begun so much later along the circuit: level, then a steeper way to the same place. */
export const withDescent = (b: Briefing, lateM: number): Briefing => {
  if (lateM === 0) return b;
  const { toGoM, heightM } = b.profile;
  const { topM, fromM } = topOfDescent(b);
  const late = (m: number): number => (m > fromM - lateM ? topM : lookup(toGoM, heightM, m));
  const early = (m: number): number => lookup(toGoM, heightM, Math.min(m, Math.max(0, m + lateM)));
  return { ...b, profile: { toGoM, heightM: toGoM.map(lateM > 0 ? late : early) } };
};

/** Circuit height of the planned descent, and what is left to fly where it begins. */
export const topOfDescent = ({ profile }: Briefing): { readonly topM: number; readonly fromM: number } => {
  const topM = profile.heightM.reduce((most, height) => Math.max(most, height), 0);
  const at = profile.heightM.findIndex((height) => height > topM - 1);
  return { topM, fromM: profile.toGoM[at] ?? 0 };
};
