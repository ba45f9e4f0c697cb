import { expect } from 'vitest';

/** What somebody outside the project says of a quantity, and where. */
export interface Band {
  readonly low: number;
  readonly high: number;
  /** Document, reference row, or "common practice". */
  readonly source: string;
}

/** Fails in one sentence, with the source, when a value is outside its band or no number. */
export const expectWithin = (value: number, { low, high, source }: Band): void => {
  const inside = value >= low && value <= high;
  if (!inside) expect.fail(`must be ${low} to ${high} (${source}), was ${value}`);
  expect(inside).toBe(true);
};

/** A band of so many percent around a published figure. */
export const near = (value: number, percent: number, source: string): Band => {
  const off = (Math.abs(value) * percent) / 100;
  return { low: value - off, high: value + off, source };
};

/** A band of so much, in the figure's own unit, around it. */
export const about = (value: number, off: number, source: string): Band => ({
  low: value - off,
  high: value + off,
  source,
});
