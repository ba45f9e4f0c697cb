import { useState } from 'react';
import { itemTitle, partOf, unitOf } from '../../lesson/judge/item-words.ts';
import { measuresOf } from '../../lesson/judge/judge.ts';
import type { ItemReport } from '../../lesson/judge/report.ts';
import { PARTS } from '../../lesson/judge/rule.ts';
import { briefly, toleranceWords, valueWords } from '../../lesson/judge/value-words.ts';
import { BAND_WORDS } from './bands.ts';
import '../styles/judged-items.css';

/** In the order in which a flight is talked over. */
const grouped = (items: readonly ItemReport[]): readonly (readonly [string, readonly ItemReport[]])[] => {
  const byPart = new Map<string, ItemReport[]>();
  for (const item of items) byPart.set(partOf(item), [...(byPart.get(partOf(item)) ?? []), item]);
  return PARTS.flatMap((part) => {
    const found = byPart.get(part);
    return found === undefined ? [] : [[part, found] as const];
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
        {valueWords(item.value, unitOf(item))}
        <span className="only-heard"> {BAND_WORDS[item.band]}</span>
      </span>
    </td>
    <td>{item.target === null ? '' : briefly(item.target, unitOf(item))}</td>
    <td>{toleranceWords(item.target, item.low, item.high, unitOf(item))}</td>
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
                <Row key={`${item.id}-${item.circuit}`} item={item} />
              ))}
            </tbody>
          ))}
        </table>
      )}
    </section>
  );
};
