/** Mean, lowest and highest of a quantity over a stretch of the flight; plain data. */
export interface Measure {
  count: number;
  sum: number;
  min: number;
  max: number;
}

export const newMeasure = (): Measure => ({ count: 0, sum: 0, min: 0, max: 0 });

export const takeIn = (m: Measure, value: number): void => {
  m.min = m.count === 0 || value < m.min ? value : m.min;
  m.max = m.count === 0 || value > m.max ? value : m.max;
  m.sum += value;
  m.count += 1;
};

/** Null before the first value. */
export const meanOf = (m: Measure): number | null => (m.count === 0 ? null : m.sum / m.count);

/** Of the lowest and the highest, the one further from a target; null before the first value. */
export const farthestFrom = (m: Measure, target: number): number | null => {
  if (m.count === 0) return null;
  return Math.abs(m.max - target) >= Math.abs(m.min - target) ? m.max : m.min;
};
