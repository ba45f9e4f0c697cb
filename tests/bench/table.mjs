/** A figure with three digits that matter. */
const short = (x) => {
  if (!Number.isFinite(x)) return String(x);
  if (x !== 0 && Math.abs(x) < 0.001) return x.toExponential(1);
  if (Math.abs(x) >= 100) return Math.round(x).toLocaleString('en-GB');
  return x.toFixed(Math.abs(x) >= 10 ? 1 : Math.abs(x) >= 1 ? 2 : 3);
};

const budgetText = ({ budget, sense, unit }) =>
  budget === null ? '' : `${sense} ${short(budget)} ${unit}`.trim();

/** How often the figure fits: 1 and more keeps the budget, below 1 does not. */
const ratioOf = ({ figure, budget, sense }) =>
  budget === null ? null : sense === 'at most' ? budget / figure : figure / budget;

export const HEADINGS = ['', 'figure', 'budget', 'ratio'];
const WIDTHS = [58, 18, 26, 8];

export const line = (cells) =>
  cells.map((cell, i) => (i === 0 ? cell.padEnd(WIDTHS[0]) : cell.padStart(WIDTHS[i]))).join('');

/** One row as text: name, figure, budget, ratio. */
export const rowText = (row) => {
  const ratio = ratioOf(row);
  const mark = ratio === null ? '' : `${short(ratio)}${ratio < 1 ? ' !' : '  '}`;
  return line([row.name, `${short(row.figure)} ${row.unit}`.trim(), budgetText(row), mark]);
};
