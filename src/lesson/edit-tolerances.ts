import * as v from 'valibot';
import { describeIssue } from '../units/issues.ts';
import { FAA_LICENCE_TEST, type Limit, type LimitName, type ToleranceSet } from './tolerances.ts';

const notNegative = v.pipe(v.number(), v.finite(), v.minValue(0));
const text = v.pipe(v.string(), v.minLength(1));

const limitSchema = v.strictObject({
  below: notNegative,
  above: notNegative,
  source: text,
  sure: v.picklist(['seen', 'quoted', 'memory', 'practice', 'own']),
});

const LIMIT_NAMES = (Object.keys(FAA_LICENCE_TEST) as (keyof ToleranceSet)[]).filter(
  (name): name is LimitName => name !== 'id' && name !== 'title',
);

const setSchema = v.strictObject({
  id: text,
  title: text,
  ...(Object.fromEntries(LIMIT_NAMES.map((name) => [name, limitSchema])) as Record<
    LimitName,
    typeof limitSchema
  >),
});

/** A set as it was kept or sent. Throws an Error sentence with place, expected and found. */
export const parseToleranceSet = (json: unknown, file: string): ToleranceSet => {
  const result = v.safeParse(setSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  return result.output;
};

/** The same set with one limit of somebody's own; it says so, and what it was before. */
export const withLimit = (
  set: ToleranceSet,
  name: LimitName,
  change: Pick<Limit, 'below' | 'above'>,
): ToleranceSet => {
  const was = set[name];
  const source = was.sure === 'own' ? was.source : `entered by you; before: ${was.source}`;
  return {
    ...set,
    id: ownId(set.id),
    title: ownTitle(set.title),
    [name]: { ...change, source, sure: 'own' },
  };
};

const ownId = (id: string): string => (id.startsWith('own-') ? id : `own-${id}`);
const ownTitle = (title: string): string => (title.endsWith(', changed') ? title : `${title}, changed`);

/** Limits that rest on memory or on practice alone: what a page marks. */
export const unsureLimits = (set: ToleranceSet): readonly LimitName[] =>
  LIMIT_NAMES.filter((name) => set[name].sure === 'memory' || set[name].sure === 'practice');
