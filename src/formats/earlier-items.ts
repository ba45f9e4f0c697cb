import type { DueId } from '../lesson/memory.ts';

/** In files of version 1 and attempts kept by then the circuit stood in the id from the second on: `downwind-height-2`. */
const WITH_CIRCUIT = /^(.*[a-z]|gate-\d+)-(\d+)$/;

/** A judged item as it is kept today: the row's own id, and its circuit beside it. One that has its circuit stays as it is. */
export const withCircuit = <T extends { readonly id: string; readonly circuit?: number | undefined }>(
  item: T,
): T & { readonly circuit: number } => {
  const { id, circuit } = item;
  if (circuit !== undefined) return { ...item, circuit };
  const found = WITH_CIRCUIT.exec(id);
  // A gate's height is no circuit
  if (found === null || found[1] === 'gate') return { ...item, circuit: 1 };
  return { ...item, id: found[1] as string, circuit: Number(found[2]) };
};

/** How safety stops were worded before they were kept with the id of their row. */
const STOPS: readonly (readonly [RegExp, string])[] = [
  [/^the stall warner/, 'warner'],
  [/below 1\.2 times/, 'slow'],
  [/deg of bank in the turn to final/, 'bank-final-turn'],
  [/deg of bank at/, 'bank-low'],
  [/^all lights red/, 'four-reds'],
];

/** A safety stop as it is kept today: with the id of its row. */
export const withStopId = <T extends { readonly id?: string | undefined; readonly what: string }>(
  stop: T,
): T & { readonly id: string } => ({
  ...stop,
  id: stop.id ?? STOPS.find(([words]) => words.test(stop.what))?.[1] ?? 'went-on',
});

/** A go-around as it is kept today: with what asked for it. */
export const withDue = <
  T extends {
    readonly due?: DueId | null | undefined;
    readonly due_at_s: number | null;
    readonly why: string;
  },
>(
  flown: T,
): T & { readonly due: DueId | null } => {
  if (flown.due !== undefined) return { ...flown, due: flown.due };
  if (flown.due_at_s === null) return { ...flown, due: null };
  return { ...flown, due: flown.why.startsWith('not stabilised at') ? 'gate' : 'asked' };
};
