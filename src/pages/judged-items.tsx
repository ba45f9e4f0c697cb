import { useState } from 'react';
import { itemTitle } from '../lesson/judge/item-words.ts';
import { measuresOf } from '../lesson/judge/judge.ts';
import type { ItemReport } from '../lesson/judge/report.ts';
import { briefly, toleranceWords, valueWords } from '../lesson/judge/value-words.ts';
import type { LegName } from '../lesson/names.ts';
import { BAND_WORDS } from './bands.ts';
import './styles/judged-items.css';

interface Group {
  readonly title: string;
  readonly has: (item: ItemReport) => boolean;
}

const onLegs = (...legs: readonly LegName[]) => {
  const wanted: ReadonlySet<string> = new Set(legs);
  return (item: ItemReport) => wanted.has(item.leg);
};
const idHas = (pattern: RegExp) => (item: ItemReport) => pattern.test(item.id);

/**
 * In the order in which an approach is talked over: approach, final, round-out, hold-off, touchdown, landing roll,
 * then the earlier legs. An item stands in the first group that has it.
 */
const GROUPS: readonly Group[] = [
  { title: 'Approach', has: idHas(/^gate-|^go-around|^final-(lights|flap)|-power$|^slip-/) },
  { title: 'Round-out', has: idHas(/^round-out|^float/) },
  { title: 'Touchdown', has: idHas(/^touchdown/) },
  { title: 'Landing roll', has: idHas(/^landing-roll|^nose-held|^brakes$|^stop-remaining/) },
  { title: 'Final', has: onLegs('final', 'turn-to-final') },
  { title: 'Hold-off', has: onLegs('hold-off') },
  { title: 'Base', has: onLegs('base', 'turn-to-base') },
  { title: 'Downwind', has: onLegs('downwind', 'turn-to-downwind') },
  { title: 'Crosswind', has: onLegs('crosswind', 'turn-to-crosswind') },
  { title: 'Upwind and take-off', has: onLegs('upwind', 'take-off-roll', 'line-up') },
  { title: 'All through', has: () => true },
];
const SHOWN = [
  'Approach',
  'Final',
  'Round-out',
  'Hold-off',
  'Touchdown',
  'Landing roll',
  'Base',
  'Downwind',
  'Crosswind',
  'Upwind and take-off',
  'All through',
];

const grouped = (items: readonly ItemReport[]): readonly (readonly [string, readonly ItemReport[]])[] => {
  const byTitle = new Map<string, ItemReport[]>();
  for (const item of items) {
    const title = GROUPS.find((group) => group.has(item))?.title ?? 'All through';
    byTitle.set(title, [...(byTitle.get(title) ?? []), item]);
  }
  return SHOWN.flatMap((title) => {
    const found = byTitle.get(title);
    return found === undefined ? [] : [[title, found] as const];
  });
};

/** Where the value lies: the tolerance as a lighter stretch in the middle, the value as a bar. */
const Bar = ({ item }: { readonly item: ItemReport }) => {
  const { value, target, low, high } = item;
  if (value === null || (low === null && high === null)) return null;
  const middle = target ?? ((low ?? 0) + (high ?? 0)) / 2;
  const below = low === null ? middle - (high ?? middle) : low - middle;
  const above = high === null ? -(below || -1) : high - middle;
  const wide = Math.max(Math.abs(below), Math.abs(above), 1e-9) * 2;
  const place = (v: number): number => 45 + Math.max(-1, Math.min(1, (v - middle) / wide)) * 43;
  const from = low === null ? 2 : place(low);
  const to = high === null ? 88 : place(high);
  return (
    <svg className="item-bar" viewBox="0 0 90 12" aria-hidden="true">
      <rect className="bar-all" width={90} height={12} />
      <rect className="bar-inside" x={from} width={Math.max(1, to - from)} height={12} />
      <rect className={`bar-value bar-${item.band}`} x={place(value) - 2} width={4} height={12} />
    </svg>
  );
};

type Filter = 'everything' | 'what fell short';
const FILTERS: readonly Filter[] = ['everything', 'what fell short'];
const fellShort = (item: ItemReport): boolean => item.band === 'amber' || item.band === 'red';

const Row = ({ item }: { readonly item: ItemReport }) => (
  <tr>
    <th scope="row">
      {itemTitle(item)} <small className="soft">{measuresOf(item.id)}</small>
    </th>
    <td>
      <span className={`band band-${item.band}`}>
        {valueWords(item.value, item.unit)}
        <span className="only-heard"> {BAND_WORDS[item.band]}</span>
      </span>
    </td>
    <td>{item.target === null ? '' : briefly(item.target, item.unit)}</td>
    <td>{toleranceWords(item.target, item.low, item.high, item.unit)}</td>
    <td>
      <Bar item={item} />
    </td>
    <td className="soft item-source">{item.source}</td>
  </tr>
);

/** Every item that was judged, with value, target, tolerance and source. */
export const Items = ({ items }: { readonly items: readonly ItemReport[] }) => {
  const [filter, setFilter] = useState<Filter>('everything');
  const shown = items.filter((item) => filter === 'everything' || fellShort(item));
  const short = items.filter(fellShort).length;
  return (
    <section className="judged-items" aria-labelledby="title-items">
      <div className="judged-head">
        <h2 id="title-items">Item by item</h2>
        <span className="joined small no-print">
          {FILTERS.map((each) => (
            <button key={each} type="button" aria-pressed={filter === each} onClick={() => setFilter(each)}>
              {each}
              {each === 'everything' ? ` (${items.length})` : ` (${short})`}
            </button>
          ))}
        </span>
      </div>
      {shown.length === 0 ? (
        <p>{items.length === 0 ? 'Too little was flown to judge.' : 'Nothing fell short.'}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">item</th>
              <th scope="col">value</th>
              <th scope="col">target</th>
              <th scope="col">tolerance</th>
              <td />
              <th scope="col">source</th>
            </tr>
          </thead>
          {grouped(shown).map(([title, found]) => (
            <tbody key={title}>
              <tr className="group">
                <th scope="rowgroup" colSpan={6}>
                  {title}
                </th>
              </tr>
              {found.map((item) => (
                <Row key={item.id} item={item} />
              ))}
            </tbody>
          ))}
        </table>
      )}
    </section>
  );
};
