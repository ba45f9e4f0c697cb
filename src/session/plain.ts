/**
 * Plain data: what memories and keyframes are made of. Numbers, texts, booleans, null, arrays, records and
 * Float64Array; no functions, no classes, no cycles.
 */
export type Plain =
  | number
  | string
  | boolean
  | null
  | undefined
  | Float64Array
  | readonly Plain[]
  | { readonly [key: string]: Plain };

/**
 * A deep copy that shares nothing with its original that can still change: what is frozen is shared. So a
 * memory that freezes what is done costs a keyframe no more the longer the flight.
 */
export const clonePlain = <T>(value: T): T => copyOf(value) as T;

const copyOf = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  if (value instanceof Float64Array) return value.slice();
  if (Array.isArray(value)) return value.map(copyOf);
  // Copied whole first: the copy is then of the same shape to the engine, which goes on with it as fast
  const copy: Record<string, unknown> = { ...value };
  for (const key in copy) if (typeof copy[key] === 'object') copy[key] = copyOf(copy[key]);
  return copy;
};
