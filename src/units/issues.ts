/**
 * What a file checker found wrong, as one sentence with the place, what was expected and what was found:
 * `two-seat.json: wing.areaM2 must be above 0, was -14`. It takes the finding's plain fields, so that the
 * folders of the trade need not know each other's checker.
 */
export interface Issue {
  /** Name of the check that failed: 'gt_value', 'number', 'strict_object' ... */
  readonly type: string;
  readonly expected: string | null;
  readonly received: string;
  readonly message: string;
  readonly input?: unknown;
  readonly requirement?: unknown;
  readonly path?: readonly { readonly key: unknown }[] | undefined;
}

/** What was demanded, in words, by the name of the check. */
const DEMANDS: Readonly<Record<string, (issue: Issue) => string>> = {
  gt_value: (i) => `above ${String(i.requirement)}`,
  lt_value: (i) => `below ${String(i.requirement)}`,
  min_value: (i) => `at least ${String(i.requirement)}`,
  max_value: (i) => `at most ${String(i.requirement)}`,
  number: () => 'a number',
  finite: () => 'a finite number',
  integer: () => 'a whole number',
  string: () => 'text',
  boolean: () => 'true or false',
  array: () => 'a list',
  tuple: () => 'a list of a fixed length',
  strict_object: () => 'an object',
  object: () => 'an object',
  loose_object: () => 'an object',
  record: () => 'an object',
  min_length: (i) =>
    typeof i.input === 'string' ? 'text that is not empty' : `at least ${String(i.requirement)} long`,
  max_length: (i) => `at most ${String(i.requirement)} long`,
  regex: (i) => `text like ${String(i.requirement)}`,
  picklist: (i) => oneOf(i.expected),
  union: (i) => oneOf(i.expected),
  literal: (i) => oneOf(i.expected),
  variant: (i) => oneOf(i.expected),
};

const oneOf = (expected: string | null): string => {
  const choices = (expected ?? '').replace(/^\(|\)$/g, '').split(' | ');
  return choices.length > 1 ? `one of ${choices.join(', ')}` : (choices[0] ?? '');
};

/** Keys joined as they would be written in a program: `runway.ends[1].headingDegM`. */
function pathText(keys: readonly unknown[]): string {
  let text = '';
  for (const key of keys) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? String(key) : `.${String(key)}`;
  }
  return text;
}

const foundText = (input: unknown): string => {
  if (typeof input === 'string')
    return JSON.stringify(input.length > 60 ? `${input.slice(0, 57)}...` : input);
  if (Array.isArray(input)) return `a list of ${input.length}`;
  if (input !== null && typeof input === 'object') return 'an object';
  return String(input);
};

/** One finding as a sentence without a full stop; `file` names where it stands. */
export function describeIssue(file: string, issue: Issue): string {
  const keys = (issue.path ?? []).map((step) => step.key);
  const place = pathText(keys);
  if (issue.expected === 'never' && keys.length > 0)
    return `${file}: ${place} is not a key that is known here`;
  const missing = issue.received === 'undefined' && issue.input === undefined && keys.length > 0;
  const demand = DEMANDS[issue.type]?.(issue) ?? `${issue.expected ?? issue.message}`;
  if (missing) return `${file}: ${place} is missing`;
  return `${file}: ${place === '' ? 'the whole' : place} must be ${demand}, was ${foundText(issue.input)}`;
}
