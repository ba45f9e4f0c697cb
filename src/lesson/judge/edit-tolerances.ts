import * as v from 'valibot';
import { describeIssue } from '../../units/issues.ts';
import {
  DEFAULT_TOLERANCES,
  FAA_LICENCE_TEST,
  type Limit,
  type LimitName,
  TOLERANCE_SETS,
  type ToleranceSet,
} from './tolerances.ts';

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

/** Which set a flight is judged by, and what was changed in it: kept with the flight, enough to have the set again. */
export interface JudgedBy {
  readonly set: string;
  readonly changed: Readonly<Record<string, Pick<Limit, 'below' | 'above'>>>;
}

/** The set in full; the usual one where nothing says otherwise or the named one is no more. */
export const limitsOf = (by: JudgedBy | null): ToleranceSet => {
  const set = TOLERANCE_SETS.find(({ id }) => id === by?.set) ?? DEFAULT_TOLERANCES;
  return Object.entries(by?.changed ?? {}).reduce(
    (changed, [name, limit]) =>
      LIMIT_NAMES.includes(name as LimitName) ? withLimit(changed, name as LimitName, limit) : changed,
    set,
  );
};

const ownId = (id: string): string => (id.startsWith('own-') ? id : `own-${id}`);
const ownTitle = (title: string): string => (title.endsWith(', changed') ? title : `${title}, changed`);
