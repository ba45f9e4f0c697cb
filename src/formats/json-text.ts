/** JSON from a file's text; an Error sentence naming the file when it is none, or holds what no file of ours does. */
export const parseJson = (text: string, file: string): unknown => {
  let json: unknown;
  try {
    json = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch (error) {
    const reason = error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : 'unreadable';
    throw new Error(`${file}: must be JSON, was not (${reason.slice(0, 120)})`);
  }
  checkKeys(json, file);
  return json;
};

/** Names that mean something to the language and nothing to a flight. */
const KEPT_OUT = new Set(['__proto__', 'constructor', 'prototype']);
const DEEPEST = 40;

/** Walks everything without recursion; throws an Error sentence at a key that is kept out and at a nest too deep. */
const checkKeys = (json: unknown, file: string): void => {
  const open: { readonly value: unknown; readonly depth: number }[] = [{ value: json, depth: 0 }];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { value, depth } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > DEEPEST) throw new Error(`${file}: must be at most ${DEEPEST} levels deep, was deeper`);
    if (Array.isArray(value)) {
      if (typeof value[0] === 'number' && typeof value[value.length - 1] === 'number') {
        if (value.every((inner) => typeof inner === 'number')) continue;
      }
      for (const inner of value) open.push({ value: inner, depth: depth + 1 });
      continue;
    }
    for (const key of Object.keys(value)) {
      if (KEPT_OUT.has(key)) throw new Error(`${file}: "${key}" is not a key that is known here`);
      open.push({ value: (value as Record<string, unknown>)[key], depth: depth + 1 });
    }
  }
};
