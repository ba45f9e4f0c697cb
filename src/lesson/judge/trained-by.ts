import { ruleOf } from './rules.ts';

/** The exercise that trains a row; the normal circuit for one that is no more. */
export const trainedBy = (id: string): string => ruleOf(id)?.trainedBy ?? 'normal-circuit';
