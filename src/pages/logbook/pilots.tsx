import { useLayoutEffect, useRef, useState } from 'react';
import type { LogbookNow } from './use-logbook.ts';

/** Who flies: another pilot, a new one, or a new name for this one. */
export const Pilots = ({ book, pilot, pilots }: Pick<LogbookNow, 'book' | 'pilot' | 'pilots'>) => {
  const [asking, setAsking] = useState<'' | 'new' | 'rename'>('');
  const [name, setName] = useState('');
  const [wrong, setWrong] = useState('');
  const field = useRef<HTMLInputElement>(null);
  // It was asked for by the button before it
  useLayoutEffect(() => {
    if (asking !== '') field.current?.focus();
  }, [asking]);
  const ask = (what: 'new' | 'rename') => {
    setName(what === 'rename' ? pilot : '');
    setWrong('');
    setAsking(what);
  };
  const say = async () => {
    try {
      if (asking === 'rename') {
        await book.renamePilot(pilot, name);
        await book.choosePilot(name);
      } else await book.choosePilot(name);
      setAsking('');
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <div className="log-pilots">
      <label htmlFor="pilot">pilot</label>
      <select id="pilot" value={pilot} onChange={(event) => void book.choosePilot(event.currentTarget.value)}>
        {pilots.map((each) => (
          <option key={each} value={each}>
            {each}
          </option>
        ))}
      </select>
      <button type="button" onClick={() => ask('new')}>
        another pilot
      </button>
      <button type="button" onClick={() => ask('rename')}>
        rename
      </button>
      {asking ? (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void say();
          }}
        >
          <label htmlFor="pilot-name">{asking === 'new' ? 'name of the new pilot' : 'new name'}</label>
          <input
            id="pilot-name"
            value={name}
            maxLength={80}
            ref={field}
            aria-invalid={wrong !== ''}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <button type="submit" className="strong">
            {asking === 'new' ? 'add' : 'rename'}
          </button>
          <button type="button" onClick={() => setAsking('')}>
            leave it
          </button>
        </form>
      ) : null}
      {wrong ? (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      ) : null}
    </div>
  );
};
