import { useDeferredValue, useMemo, useState } from 'react';
import { flownTitle, outcomeWords } from '../../flight/outcome-words.ts';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import { isUnaided } from '../../lesson/attempts/attempt.ts';
import { searchRows } from '../../lesson/attempts/search.ts';
import { isSound } from '../../lesson/attempts/trends.ts';
import { clockText } from '../../units/format.ts';
import { dayText } from '../shown/when.ts';
import { exerciseTitle, successOf } from './trained-by.ts';

/** Rows on one page of the list: a thousand attempts stay quick. */
const PAGE = 25;

type Filter = 'all' | 'sound' | 'fell short' | 'without help';
const FILTERS: readonly Filter[] = ['all', 'sound', 'fell short', 'without help'];
const PASSES: Readonly<Record<Filter, (row: AttemptRow) => boolean>> = {
  all: () => true,
  sound: (row) => isSound(row, successOf),
  'fell short': (row) => row.demonstration !== true && !isSound(row, successOf),
  'without help': (row) => isUnaided(row.help),
};

const countOf = (row: AttemptRow, band: string): number =>
  row.items.filter((item) => item.band === band).length;

interface ListProps {
  readonly rows: readonly AttemptRow[];
  readonly chosen: string;
  readonly onChoose: (id: string) => void;
}

const Row = ({ row, chosen, onChoose }: { readonly row: AttemptRow } & Omit<ListProps, 'rows'>) => (
  <tr aria-current={row.id === chosen ? 'true' : undefined}>
    <th scope="row">
      <button
        type="button"
        className="log-choose"
        aria-pressed={row.id === chosen}
        onClick={() => onChoose(row.id)}
      >
        {dayText(row.when)}
      </button>
    </th>
    <td>
      {flownTitle(exerciseTitle(row.exercise), row.exercise, row.from)}
      {row.parent ? <span className="soft"> · branch</span> : null}
      {row.demonstration === true ? <span className="soft"> · demonstration</span> : null}
    </td>
    <td>
      {row.aerodrome} {row.runway}
    </td>
    <td>{row.wind}</td>
    <td>{outcomeWords(row.outcome)}</td>
    <td className="log-counts">
      <span className="band band-green">{countOf(row, 'green')}</span>
      <span className="band band-amber">{countOf(row, 'amber')}</span>
      <span className="band band-red">{countOf(row, 'red')}</span>
    </td>
    <td className="number">{clockText(row.flightS)}</td>
    <td>
      <a href={`#debrief/${row.id}`}>debrief</a>
    </td>
  </tr>
);

/** The attempts, newest first: searched, filtered, a page at a time. */
export const AttemptList = ({ rows, chosen, onChoose }: ListProps) => {
  const [asked, setAsked] = useState('');
  const [filter, setFilter] = useState<Filter>('all');
  const [page, setPage] = useState(0);
  const search = useDeferredValue(asked);
  const found = useMemo(() => searchRows(rows, search).filter(PASSES[filter]), [rows, search, filter]);
  const pages = Math.max(1, Math.ceil(found.length / PAGE));
  const at = Math.min(page, pages - 1);
  const shown = found.slice(at * PAGE, (at + 1) * PAGE);
  return (
    <section className="log-list" aria-labelledby="title-attempts">
      <div className="log-head-row">
        <h2 id="title-attempts">Attempts</h2>
        <label htmlFor="log-search" className="only-heard">
          search
        </label>
        <input
          id="log-search"
          type="search"
          placeholder="search: wind, place, words of the notes …"
          value={asked}
          onChange={(event) => {
            setAsked(event.currentTarget.value);
            setPage(0);
          }}
        />
        <span className="joined small">
          {FILTERS.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={filter === each}
              onClick={() => {
                setFilter(each);
                setPage(0);
              }}
            >
              {each}
            </button>
          ))}
        </span>
      </div>
      <div className="log-scroll">
        <table>
          <caption className="only-heard">
            {found.length} of {rows.length} attempts
          </caption>
          <thead>
            <tr>
              <th scope="col">when</th>
              <th scope="col">exercise</th>
              <th scope="col">where</th>
              <th scope="col">wind</th>
              <th scope="col">ended</th>
              <th scope="col">inside, just outside, outside</th>
              <th scope="col" className="number">
                flown
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row key={row.id} row={row} chosen={chosen} onChoose={onChoose} />
            ))}
          </tbody>
        </table>
      </div>
      {found.length === 0 ? (
        <p className="log-empty">
          {rows.length === 0
            ? 'Nothing has been flown yet. Every flight that ends is kept here.'
            : 'Nothing is found.'}
        </p>
      ) : null}
      <div className="log-pages">
        <p className="soft" role="status">
          {found.length} of {rows.length} attempts
        </p>
        {pages > 1 ? (
          <>
            <button type="button" disabled={at === 0} onClick={() => setPage(at - 1)}>
              newer
            </button>
            <span>
              page {at + 1} of {pages}
            </span>
            <button type="button" disabled={at === pages - 1} onClick={() => setPage(at + 1)}>
              older
            </button>
          </>
        ) : null}
      </div>
    </section>
  );
};
