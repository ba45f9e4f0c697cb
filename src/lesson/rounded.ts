/** To a number of decimals, never "-0": what a report shows need not carry sixteen digits. */
export const rounded = (value: number, decimals = 0): number => {
  const scale = [1, 10, 100, 1000, 10000][decimals] ?? 1;
  return Math.round(value * scale) / scale + 0;
};
