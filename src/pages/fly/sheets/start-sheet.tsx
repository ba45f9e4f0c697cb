import { useState } from 'react';
import { keysOf } from '../../../input/actions.ts';
import { changeSettings, useStore } from '../../store.ts';
import { KeyCap } from '../levers/key-cap.tsx';
import { flightCommands } from '../run/commands.ts';
import './own-keys.ts';
import type { Settings } from '../../settings.ts';
import { SheetOver } from './sheet.tsx';
import { suiting, WHO } from './who-flies.ts';

export const CAUTION =
  'For study only. The aeroplanes and aerodromes are invented, and so are their figures; the handbook of your aeroplane, local procedures and a licensed instructor decide.';

const PAIRS = [
  {
    actions: ['nose-up', 'nose-down'],
    does: 'pull and push: the nose goes up or down, then your hand holds it there',
  },
  { actions: ['roll-left', 'roll-right'], does: 'bank left and right; the bank stays until you take it off' },
  { actions: ['power-up', 'power-down'], does: 'more and less power' },
  { actions: ['freeze', 'help'], does: 'freeze the flight, and see all other keys' },
] as const;

/** Leaves the sheet and lets the flight begin. */
const leave = (begin: () => void): void => {
  useStore.setState({ sheet: null });
  changeSettings({ seenStart: true });
  begin();
};

const flyFromFinal = (who: Settings['who']): void =>
  leave(() => {
    changeSettings({ start: 'final', exercise: '', ...suiting(who) });
    if (flightCommands()?.prepare()) flightCommands()?.start();
  });

const watchOne = (who: Settings['who']): void =>
  leave(() => {
    changeSettings({ start: 'line-up', exercise: '', ...suiting(who) });
    if (flightCommands()?.prepare()) flightCommands()?.watch();
  });

/** Who flies; whoever says nothing gets what everybody gets. */
const WhoFlies = ({
  who,
  onWho,
}: {
  readonly who: Settings['who'];
  readonly onWho: (who: Settings['who']) => void;
}) => (
  <fieldset className="who">
    <legend>Who flies? It sets how much is said, shown and allowed.</legend>
    {WHO.map(({ id, text, says }) => (
      <label key={id}>
        <input type="radio" name="who" checked={who === id} onChange={() => onWho(id)} />
        <span>
          {text} <small>{says}</small>
        </span>
      </label>
    ))}
  </fieldset>
);

/** First start: what this is, who flies, the caution, four pairs of keys, and the ways in. */
export const StartSheet = () => {
  const [who, setWho] = useState(useStore.getState().settings.who);
  const loaded = useStore((s) => s.ready || s.failed !== '');
  return (
    <SheetOver
      title="One circuit, flown and read"
      onClose={() => leave(() => undefined)}
      className="sheet-start"
    >
      <p className="lead">
        Lapwing is a practice circuit: take off, fly round, come down the slope, stop. The plan shows where
        the wind takes you, the profile how you come down, the window what you would see. Afterwards it says
        what happened and what to look at first.
      </p>
      <WhoFlies who={who} onWho={setWho} />
      <dl className="pairs">
        {PAIRS.map((pair) => (
          <div key={pair.does}>
            <dt>
              {pair.actions.map((action) => (
                <KeyCap key={action} name={keysOf(action)[0] ?? ''} />
              ))}
            </dt>
            <dd>{pair.does}</dd>
          </div>
        ))}
      </dl>
      <p className="caution">{CAUTION}</p>
      <div className="sheet-buttons">
        <button type="button" className="strong" data-first disabled={!loaded} onClick={() => watchOne(who)}>
          watch one flown
        </button>
        <button type="button" disabled={!loaded} onClick={() => flyFromFinal(who)}>
          fly from final
        </button>
        <button type="button" onClick={() => leave(() => undefined)}>
          just fly
        </button>
        {loaded ? null : <span className="soft">the aeroplane is being rolled out …</span>}
      </div>
    </SheetOver>
  );
};
