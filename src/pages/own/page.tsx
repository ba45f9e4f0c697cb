import { type ChangeEvent, useState } from 'react';
import '../styles/brief.css';
import '../styles/own.css';
import { ownFileText } from '../../formats/own-file.ts';
import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { saveFile } from '../shown/save-file.ts';
import { ThemeButton } from '../shown/theme-button.tsx';
import { changeSettings } from '../store.ts';
import { CardForm } from './card-form.tsx';
import { DamagedNote } from './damaged-note.tsx';
import { ownPlaces, takeIn, useOwnPlaces } from './own-places.ts';
import { RunwayForm } from './runway-form.tsx';

const FILE_NAME = 'my-circuit.json';

const saveAll = (): void =>
  saveFile(FILE_NAME, new Blob([ownFileText(ownPlaces())], { type: 'application/json' }));

interface FileProps {
  readonly onSaid: (sentence: string) => void;
}

/** Everything entered as one file, out and in. */
const OneFile = ({ onSaid }: FileProps) => {
  const own = useOwnPlaces();
  const [wrong, setWrong] = useState('');
  const nothing = own.aerodromes.length + own.cards.length === 0;
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.target;
    const file = input.files?.[0];
    if (!file) return;
    try {
      const { read, kept } = takeIn(await file.text(), file.name);
      const [place] = read.aerodromes;
      const [card] = read.cards;
      changeSettings({
        ...(place && { aerodrome: place.id, runway: '', circuit: null }),
        ...(card && { aeroplane: card.id }),
      });
      setWrong('');
      const titles = [...read.aerodromes, ...read.cards].map((each) => each.title).join(', ');
      onSaid(
        kept
          ? `Taken in: ${titles}.`
          : `Taken in for this visit: ${titles}. The browser keeps nothing more for this page.`,
      );
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
    }
    input.value = '';
  };
  return (
    <section className="own-file" aria-labelledby="own-file">
      <h2 id="own-file">As one file</h2>
      <p className="soft">
        What you have entered stays in this browser. The file takes it elsewhere, and flies without a screen
        too: npm run fly -- --aerodrome {FILE_NAME}.
      </p>
      <div className="own-buttons">
        <button type="button" disabled={nothing} onClick={saveAll}>
          save the file
        </button>
        <label className="own-take">
          open a file
          <input type="file" accept=".json,application/json" onChange={(event) => void take(event)} />
        </label>
      </div>
      <p className="wrong" role="alert">
        {wrong}
      </p>
    </section>
  );
};

/** My runway, my numbers: entered once, kept here, briefed and flown like the built-in ones. */
export const OwnPage = () => {
  const [said, setSaid] = useState('');
  return (
    <main className="brief own">
      <header className="brief-head">
        <div>
          <h1>My runway, my numbers</h1>
          <p className="soft">Entered by you; checked as you type, kept in this browser.</p>
        </div>
        <nav className="brief-doors" aria-label="Pages">
          <a href="#brief">to the brief</a>
          <ThemeButton />
          <a href="#fly">to the flight</a>
        </nav>
      </header>
      <p className="own-said" role="status">
        {said}
      </p>
      <DamagedNote />
      <RunwayForm onSaid={setSaid} />
      <CardForm onSaid={setSaid} />
      <OneFile onSaid={setSaid} />
      <footer className="brief-foot">{CAUTION}</footer>
    </main>
  );
};
