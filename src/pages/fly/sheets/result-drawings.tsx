import type { FlownPath } from '../run/flown-path.ts';

type Points = readonly (readonly [number, number])[];

const spanOf = (all: readonly Points[], axis: 0 | 1): readonly [number, number] => {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const points of all) {
    for (const point of points) {
      low = Math.min(low, point[axis]);
      high = Math.max(high, point[axis]);
    }
  }
  return low <= high ? [low, high] : [0, 1];
};

const lineOf = (points: Points, x: (m: number) => number, y: (m: number) => number): string =>
  points.map(([a, b]) => `${x(a).toFixed(1)},${y(b).toFixed(1)}`).join(' ');

/** Circuit as planned and as flown, seen from above. */
export const ResultPlan = ({ drawn }: { readonly drawn: FlownPath }) => {
  const width = 400;
  const height = 150;
  const [left, right] = spanOf([drawn.planned, drawn.flown], 0);
  const [low, high] = spanOf([drawn.planned, drawn.flown], 1);
  const scale = Math.min((width - 30) / Math.max(1, right - left), (height - 30) / Math.max(1, high - low));
  const x = (m: number) => width / 2 + (m - (left + right) / 2) * scale;
  const y = (m: number) => height / 2 - (m - (low + high) / 2) * scale;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label="Plan: the circuit as planned and as flown">
      <polyline points={lineOf(drawn.planned, x, y)} className="line-planned" />
      <line x1={x(0)} x2={x(0)} y1={y(drawn.runway[0])} y2={y(drawn.runway[1])} className="line-runway" />
      <polyline points={lineOf(drawn.flown, x, y)} className="line-flown" />
    </svg>
  );
};

/** Height along the circuit as planned and as flown. */
export const ResultProfile = ({ drawn }: { readonly drawn: FlownPath }) => {
  const width = 640;
  const height = 150;
  const [left, right] = spanOf([drawn.plannedHeight, drawn.flownHeight], 0);
  const [, high] = spanOf([drawn.plannedHeight, drawn.flownHeight], 1);
  const x = (m: number) => 14 + ((m - left) / Math.max(1, right - left)) * (width - 28);
  const y = (m: number) => height - 18 - (m / Math.max(1, high)) * (height - 40);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label="Profile: height as planned and as flown">
      <line x1={14} x2={width - 14} y1={y(0)} y2={y(0)} className="line-ground" />
      <polyline points={lineOf(drawn.plannedHeight, x, y)} className="line-planned" />
      <polyline points={lineOf(drawn.flownHeight, x, y)} className="line-flown" />
    </svg>
  );
};
