import { type DragEvent, useEffect, useRef, useState } from 'react';
import '../styles/logbook.css';
// Files out and in come with the page, so that a press asks for nothing.
import '../../storage/exchange.ts';
import { fixed } from '../../units/format.ts';
import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { fileChecks } from '../logbook-here.ts';
import { saveFile } from '../shown/save-file.ts';
import { useStore } from '../store.ts';
import { AttemptCard } from './attempt-card.tsx';
import { AttemptList } from './attempt-list.tsx';
import { importFile, type Said, useImport } from './import-file.ts';
import { Pilots } from './pilots.tsx';
import { PractisePanel, TrendPanel } from './trend-panel.tsx';
import { type LogbookNow, useLogbook } from './use-logbook.ts';

const mb = (bytes: number): string => fixed(bytes / 1e6, bytes < 1e7 ? 1 : 0);

const sentence = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const Files = ({ now, onSaid }: { readonly now: LogbookNow; readonly onSaid: (said: Said) => void }) => {
  const input = useRef<HTMLInputElement>(null);
  const busy = useImport((s) => s.now !== null);
  const exportAll = () => {
    now.book.exportJson(now.rows.map((row) => row.id)).then(
      ({ name, blob }) => saveFile(name, blob),
      (error: unknown) => onSaid({ words: sentence(error), wrong: true }),
    );
  };
  return (
    <div className="log-files">
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        open a file
      </button>
      <input
        ref={input}
        type="file"
        className="only-heard"
        tabIndex={-1}
        aria-label="logbook file"
        accept=".json,application/json"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          if (file) void importFile(file, now.pilot);
          event.currentTarget.value = '';
        }}
      />
      <button type="button" disabled={now.rows.length === 0} onClick={exportAll}>
        save all as JSON
      </button>
    </div>
  );
};

/** How far a file is, and the way to stop it. */
const Importing = () => {
  const now = useImport((s) => s.now);
  if (now === null) return null;
  const { file, progress, writing, cancel } = now;
  return (
    <div className="log-import">
      <span role="status">
        {file} is being {writing ? 'written' : progress === null ? 'read' : 'checked'} …
      </span>
      <progress
        aria-label={`${file}, how far it is`}
        {...(progress !== null && { max: progress.of, value: writing ? progress.of : progress.done })}
      />
      <span className="soft log-import-count">
        {progress === null ? '' : `${writing ? progress.of : progress.done} of ${progress.of}`}
      </span>
      <button type="button" disabled={writing} onClick={cancel}>
        cancel
      </button>
    </div>
  );
};

const Book = ({ now }: { readonly now: LogbookNow }) => {
  const { book, rows, deleted, space } = now;
  const [chosen, setChosen] = useState('');
  const said = useImport((s) => s.said);
  const setSaid = (words: Said) => useImport.setState({ said: words });
  const [gone, setGone] = useState<readonly string[]>([]);
  const [over, setOver] = useState(false);
  const row = rows.find((each) => each.id === chosen) ?? rows[0];
  const remove = async (id: string) => {
    await book.remove([id]);
    setGone([id]);
    setSaid({ words: 'One attempt was deleted.', wrong: false });
  };
  const undo = async (ids: readonly string[]) => {
    await book.restore(ids);
    setGone([]);
    setSaid({ words: 'It is back.', wrong: false });
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file) void importFile(file, now.pilot);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the same is done by the button "open a file"
    <div
      className={`log-body ${over ? 'log-over' : ''}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <div className="log-head-row">
        <Pilots {...now} />
        <Files now={now} onSaid={setSaid} />
      </div>
      <p className={`log-said ${said?.wrong ? 'wrong' : ''}`} role="status">
        {said?.words}{' '}
        {gone.length > 0 ? (
          <button type="button" onClick={() => void undo(gone)}>
            undo
          </button>
        ) : null}
      </p>
      <Importing />
      <PractisePanel rows={rows} />
      <div className="log-columns">
        <AttemptList rows={rows} chosen={row?.id ?? ''} onChoose={setChosen} />
        {row ? (
          <AttemptCard
            book={book}
            row={row}
            onDelete={() => void remove(row.id)}
            onSays={(words) => setSaid({ words, wrong: true })}
          />
        ) : null}
      </div>
      <TrendPanel rows={rows} />
      <p className="soft log-space">
        {deleted.length > 0 ? (
          <>
            {deleted.length} deleted {deleted.length === 1 ? 'attempt' : 'attempts'} can be had back for 30
            days.{' '}
            <button type="button" onClick={() => void undo(deleted.map((each) => each.id))}>
              bring back
            </button>{' '}
            <button type="button" onClick={() => void book.purge(deleted.map((each) => each.id))}>
              delete for good
            </button>{' '}
          </>
        ) : null}
        {space ? `${mb(space.usedBytes)} MB of ${mb(space.mostBytes)} MB in use.` : ''}
      </p>
    </div>
  );
};

/** Every attempt of every pilot on this machine. */
export const LogbookPage = () => {
  useEffect(() => fileChecks.prepare(), []);
  const now = useLogbook();
  const says = useStore((s) => s.storageSays);
  return (
    <main className="logbook">
      <header className="log-top">
        <h1>Logbook</h1>
        <nav className="log-doors" aria-label="Other pages">
          <a className="button" href="#fly">
            fly
          </a>
          <a className="button" href="#brief">
            brief
          </a>
          <a className="button" href="#exercises">
            exercises
          </a>
        </nav>
      </header>
      {says ? <p className="caution">{says}</p> : null}
      {now ? <Book now={now} /> : <p role="status">The logbook is being opened …</p>}
      <footer className="log-foot">{CAUTION}</footer>
    </main>
  );
};
