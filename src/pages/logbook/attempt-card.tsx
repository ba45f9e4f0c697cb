import { useEffect, useState } from 'react';
import { flownTitle } from '../../flight/outcome-words.ts';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import { helpWords } from '../../lesson/attempts/help-words.ts';
import type { FileOut, Logbook } from '../../storage/logbook.ts';
import { clockText, fixed } from '../../units/format.ts';
import { saveFile } from '../shown/save-file.ts';
import { dayText } from '../shown/when.ts';
import { exerciseTitle } from './trained-by.ts';

const FORMATS = [
  { name: 'JSON', says: 'flies again exactly', of: (book: Logbook, id: string) => book.exportJson([id]) },
  { name: 'CSV', says: 'a table', of: (book: Logbook, id: string) => book.exportCsv(id) },
  { name: 'GPX', says: 'a track', of: (book: Logbook, id: string) => book.exportGpx(id) },
  { name: 'KML', says: 'for a globe', of: (book: Logbook, id: string) => book.exportKml(id) },
] as const;

interface CardProps {
  readonly book: Logbook;
  readonly row: AttemptRow;
  readonly onDelete: () => void;
  readonly onSays: (sentence: string) => void;
}

/** Written down a moment after the last key. */
const PAUSE_MS = 500;

const Notes = ({ book, row }: Pick<CardProps, 'book' | 'row'>) => {
  const [text, setText] = useState(row.notes);
  const write = (notes: string) => {
    if (notes !== row.notes) void book.writeNotes(row.id, notes);
  };
  useEffect(() => {
    if (text === row.notes) return;
    const timer = setTimeout(() => void book.writeNotes(row.id, text), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [text, row, book]);
  return (
    <>
      <label htmlFor="notes">instructor’s notes</label>
      <textarea
        id="notes"
        rows={4}
        maxLength={20000}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={() => write(text)}
      />
    </>
  );
};

/** One attempt: what it came to, with how much help, notes, files, and the way to delete it. */
export const AttemptCard = ({ book, row, onDelete, onSays }: CardProps) => {
  const save = (file: Promise<FileOut>) => {
    file.then(
      ({ name, blob }) => saveFile(name, blob),
      (error: unknown) => onSays(error instanceof Error ? error.message : String(error)),
    );
  };
  return (
    <section className="log-card" aria-labelledby="title-card">
      <h2 id="title-card">
        {flownTitle(exerciseTitle(row.exercise), row.exercise, row.from)}, {dayText(row.when)}
      </h2>
      <p>{row.why}</p>
      {row.demonstration === true ? (
        <p>A demonstration by the model pilot: kept to be looked at, counted nowhere.</p>
      ) : null}
      {(row.theirsFromS ?? 0) > 0 ? (
        <p>
          The model pilot flew until {clockText(row.theirsFromS ?? 0)}; from there on it was the pilot’s own.
        </p>
      ) : null}
      {row.first && row.demonstration !== true ? <p className="first-look">{row.first}</p> : null}
      {[...row.safety, ...row.missedGoArounds.map((why) => `go-around due: ${why}`)].map((words) => (
        <p key={words} className="band-red">
          {words}
        </p>
      ))}
      <p className="soft">
        {row.aeroplane} · {row.turbulence === 'none' ? 'smooth air' : `${row.turbulence} turbulence`}
      </p>
      <p className="soft">{helpWords(row.help)}</p>
      {row.ownView.length > 0 ? <p>The pilot’s own view: {row.ownView.join(', ')}.</p> : null}
      {row.parent ? (
        <p>
          Another way on from <a href={`#debrief/${row.parent.id}`}>this attempt</a>, {fixed(row.parent.atS)}{' '}
          s into it.
        </p>
      ) : null}
      <Notes key={row.id} book={book} row={row} />
      <div className="log-card-doors">
        <a className="button" href={`#debrief/${row.id}`}>
          debrief
        </a>
        {FORMATS.map((format) => (
          <button
            key={format.name}
            type="button"
            title={format.says}
            onClick={() => save(format.of(book, row.id))}
            aria-label={`Save as ${format.name}: ${format.says}`}
          >
            {format.name}
          </button>
        ))}
        <button type="button" onClick={onDelete}>
          delete
        </button>
      </div>
    </section>
  );
};
