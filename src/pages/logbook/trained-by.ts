import { EXERCISES } from '../../exercises.ts';
import type { PractiseNext } from '../../lesson/attempts/practise.ts';
import type { Outcome } from '../../lesson/judge/report.ts';
import { trainedBy } from '../../lesson/judge/trained-by.ts';

const BY_KIND: Partial<Record<PractiseNext['kind'], string>> = {
  safety: 'normal-circuit',
  'more-wind': 'crosswind-circuit',
};

/** The exercise that trains what is to be practised; the last one flown where that is just to be flown again. */
export const exerciseFor = ({ kind, item }: PractiseNext, lastFlown: string): string =>
  BY_KIND[kind] ?? (item === null ? lastFlown : trainedBy(item));

/** How a flight of an exercise may end; with a landing where the catalogue does not have it. */
export const successOf = (id: string): readonly Outcome[] =>
  EXERCISES.find((exercise) => exercise.id === id)?.success ?? ['stopped'];

/** "Base and final" for `base-and-final`; the id in words where the catalogue no longer has it. */
export const exerciseTitle = (id: string): string =>
  EXERCISES.find((exercise) => exercise.id === id)?.title ?? id.replaceAll('-', ' ');
