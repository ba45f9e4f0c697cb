import { memo, useMemo } from 'react';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import { practiseNext } from '../../lesson/attempts/practise.ts';
import {
  consistencyOf,
  IN_A_ROW,
  type ItemTrend,
  itemTrends,
  legTrends,
} from '../../lesson/attempts/trends.ts';
import { itemTitle } from '../../lesson/judge/item-words.ts';
import { legWords } from '../../lesson/names.ts';
import { theLogbook } from '../logbook-here.ts';
import { trainAfter } from '../train.ts';
import { exerciseFor, exerciseTitle, successOf } from './trained-by.ts';

/** The last so many values are drawn. */
const DRAWN = 24;
const WIDTH = 150;
const HEIGHT = 34;

interface Limits {
  readonly low: number | null;
  readonly high: number | null;
}

/** Tolerance of the newest attempt that has the item. */
const limitsOf = (rows: readonly AttemptRow[], id: string): Limits => {
  for (const row of rows) {
    const item = row.items.find((each) => each.id === id);
    if (item) return { low: item.low, high: item.high };
  }
  return { low: null, high: null };
};

/** Values one after another, the tolerance behind them; shape says what colour says. */
const Spark = ({ trend, low, high }: Limits & { readonly trend: ItemTrend }) => {
  const points = trend.points.filter((point) => point.value !== null).slice(-DRAWN);
  const values = points.map((point) => point.value as number);
  const bottom = Math.min(...values, low ?? Number.POSITIVE_INFINITY);
  const top = Math.max(...values, high ?? Number.NEGATIVE_INFINITY);
  const span = top - bottom || 1;
  const x = (i: number): number => 6 + (i / Math.max(1, DRAWN - 1)) * (WIDTH - 12);
  const y = (value: number): number => HEIGHT - 5 - ((value - bottom) / span) * (HEIGHT - 10);
  const upper = high === null ? 0 : y(high);
  const lower = low === null ? HEIGHT : y(low);
  return (
    <svg className="spark" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <rect className="spark-inside" y={upper} width={WIDTH} height={Math.max(1, lower - upper)} />
      <polyline className="spark-line" points={values.map((value, i) => `${x(i)},${y(value)}`).join(' ')} />
      {points.map((point, i) => {
        const at = { x: x(i), y: y(point.value as number) };
        return point.band === 'green' ? (
          <circle
            key={`${point.attempt}-${point.circuit}`}
            className="spark-green"
            cx={at.x}
            cy={at.y}
            r={2.6}
          />
        ) : (
          <rect
            key={`${point.attempt}-${point.circuit}`}
            className={`spark-${point.band}`}
            x={at.x - 3}
            y={at.y - 3}
            width={6}
            height={6}
          />
        );
      })}
    </svg>
  );
};

const TENDENCIES: Readonly<Record<ItemTrend['tendency'], string>> = {
  better: 'getting better',
  worse: 'getting worse',
  steady: 'steady',
  'too-few': 'too few yet',
};

const TrendRow = ({ trend, limits }: { readonly trend: ItemTrend; readonly limits: Limits }) => {
  const { green, amber, red } = trend.lately;
  return (
    <tr>
      <th scope="row">{itemTitle(trend)}</th>
      <td>
        <Spark trend={trend} {...limits} />
      </td>
      <td>
        {green} of the last {green + amber + red} inside
      </td>
      <td>{trend.run > 1 ? `${trend.run} in a row` : ''}</td>
      <td className="soft">{TENDENCIES[trend.tendency]}</td>
    </tr>
  );
};

/** More than once, and not only looked at. */
const isJudged = ({ points, counts }: ItemTrend): boolean =>
  points.length > 1 && counts.green + counts.amber + counts.red > 0;

interface PanelProps {
  /** Of one pilot, newest first. */
  readonly rows: readonly AttemptRow[];
}

/** There, in that aeroplane and air, where the newest flight can be opened. */
const trainAsLast = async (exercise: string, newest: AttemptRow | undefined): Promise<void> => {
  const flown =
    newest === undefined
      ? null
      : await theLogbook()
          .then((book) => book.open(newest.id))
          .catch(() => null);
  trainAfter(exercise, flown?.attempt.recording.scenario ?? null);
};

/** What to practise next and why, and the way to it. */
export const PractisePanel = memo(({ rows }: PanelProps) => {
  const next = useMemo(() => practiseNext(rows, successOf), [rows]);
  const { run, best, unaidedRun } = useMemo(() => consistencyOf(rows, successOf), [rows]);
  if (next === null) return null;
  const exercise = exerciseFor(next, rows[0]?.exercise ?? '');
  return (
    <section className="log-next" aria-labelledby="title-next">
      <div>
        <h2 id="title-next">Practise next: {next.what}</h2>
        <p>{next.why}</p>
        <p className="soft">
          Sound flights in a row: {run} (most: {best}; without help: {unaidedRun}). {IN_A_ROW} in a row make
          it a habit.
        </p>
      </div>
      <button type="button" className="strong" onClick={() => void trainAsLast(exercise, rows[0])}>
        fly “{exerciseTitle(exercise)}”
      </button>
    </section>
  );
});

/** How each item and each leg went over the attempts. */
export const TrendPanel = memo(({ rows }: PanelProps) => {
  const trends = useMemo(() => itemTrends(rows).filter(isJudged), [rows]);
  const legs = useMemo(() => legTrends(rows), [rows]);
  if (trends.length === 0) return null;
  return (
    <section className="log-trends" aria-labelledby="title-trends">
      <h2 id="title-trends">Over the attempts</h2>
      <p className="log-legs">
        {legs.map(({ leg, lately }) => (
          <span key={leg}>
            {legWords(leg)}{' '}
            <span className={`band band-${lately.red > 0 ? 'red' : lately.amber > 0 ? 'amber' : 'green'}`}>
              {lately.green}/{lately.green + lately.amber + lately.red}
            </span>
          </span>
        ))}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">item</th>
            <th scope="col">value, the tolerance behind it</th>
            <th scope="col">lately</th>
            <th scope="col">in a row</th>
            <th scope="col">tendency</th>
          </tr>
        </thead>
        <tbody>
          {trends.map((trend) => (
            <TrendRow key={trend.id} trend={trend} limits={limitsOf(rows, trend.id)} />
          ))}
        </tbody>
      </table>
    </section>
  );
});
