import { DEMO, EXERCISES } from '../../catalogue.ts';
import type { PractiseNext } from '../../lesson/practise.ts';
import { selects } from '../../lesson/selection.ts';

const BY_KIND: Partial<Record<PractiseNext['kind'], string>> = {
  'go-around': 'go-around',
  safety: DEMO.exercise,
  'more-wind': 'crosswind-circuit',
};

/** The exercise that trains what is to be practised: of those that look at the item, the one that looks at the least else. */
export const trainedBy = ({ kind, item }: PractiseNext, lastFlown: string): string => {
  const known = BY_KIND[kind];
  if (known !== undefined) return known;
  if (item === null) return lastFlown;
  const looking = EXERCISES.filter(({ assessed, circuits }) => circuits === 1 && selects(assessed, item));
  const [narrowest] = [...looking].sort((a, b) => a.assessed.length - b.assessed.length);
  return narrowest?.id ?? lastFlown;
};

/** "Base and final" for `base-and-final`; the id in words where the catalogue no longer has it. */
export const exerciseTitle = (id: string): string =>
  EXERCISES.find((exercise) => exercise.id === id)?.title ?? id.replaceAll('-', ' ');
