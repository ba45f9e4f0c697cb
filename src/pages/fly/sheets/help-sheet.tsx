import { type KeyboardEvent, useState } from 'react';
import { ACTION_GROUPS, ACTIONS, type ActionId, keyCap, keysOf } from '../../../input/actions.ts';
import { changeSettings, useStore } from '../../store.ts';
import { KeyCap } from '../levers/key-cap.tsx';
import { giveKey, resetKeys } from './own-keys.ts';
import { SheetOver } from './sheet.tsx';
import { CAUTION } from './start-sheet.tsx';

interface KeyLineProps {
  readonly action: { readonly id: ActionId; readonly label: string };
  readonly changing: ActionId | null;
  readonly onChange: (action: ActionId | null) => void;
  readonly onSaid: (text: string) => void;
}

/** One action with its keys; to change them, press the button and then the key. */
const KeyLine = ({ action, changing, onChange, onSaid }: KeyLineProps) => {
  const waits = changing === action.id;
  const keys = keysOf(action.id);
  const onKeyDown = (event: KeyboardEvent) => {
    if (!waits) return;
    if (event.key === 'Tab') {
      onChange(null);
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    if (event.key === 'Escape') {
      onChange(null);
      return;
    }
    if (['Shift', 'Control', 'Alt', 'Meta', 'AltGraph'].includes(event.key)) return;
    if (giveKey(action.id, event.key)) {
      onSaid(`${action.label}: key ${keyCap(keysOf(action.id)[0] ?? '')}.`);
      onChange(null);
    } else onSaid(`${event.key} keeps its meaning; press another key, or Escape.`);
  };
  return (
    <div>
      <dt>
        <button
          type="button"
          className="key-change"
          aria-pressed={waits}
          onClick={() => onChange(waits ? null : action.id)}
          onKeyDown={onKeyDown}
        >
          {waits ? 'press a key' : keys.map((key) => <KeyCap key={key} name={key} />)}
          {!waits && keys.length === 0 ? 'none' : null}
          <span className="only-heard">
            {waits ? ` for: ${action.label}` : ` ${action.label}: change the key`}
          </span>
        </button>
      </dt>
      <dd>{action.label}</dd>
    </div>
  );
};

/** Every key, by what it is for, each of them to be changed; and how the hand behaves. */
export const HelpSheet = () => {
  const style = useStore((s) => s.settings.handStyle);
  const changed = useStore((s) => s.settings.keys);
  const [changing, setChanging] = useState<ActionId | null>(null);
  const [said, setSaid] = useState('');
  const close = () => useStore.setState({ sheet: null });
  return (
    <SheetOver title="The keys" onClose={close} className="sheet-help">
      <div className="key-groups">
        {ACTION_GROUPS.map((group) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl>
              {ACTIONS.filter((action) => action.group === group).map((action) => (
                <KeyLine
                  key={action.id}
                  action={action}
                  changing={changing}
                  onChange={setChanging}
                  onSaid={setSaid}
                />
              ))}
            </dl>
          </section>
        ))}
      </div>
      <p className="soft" aria-live="polite">
        {said ||
          'To change a key, press it here and then the new one; it is kept on this machine. On a keyboard whose letters are not Latin the keys count by their place: W is where a US keyboard has W.'}
      </p>
      <p className="soft">
        {style === 'hold'
          ? 'The hand holds: the arrow keys move the attitude you want, and a hand of limited strength keeps it. Trim moves the load from the hand to the wheel; let go to see what the wheel alone does.'
          : 'The stick: the arrow keys move it, and it springs back to where the trim wheel holds it.'}{' '}
        A game controller in the standard layout works too: left stick flies, triggers are power, shoulders
        flap, right stick feet and trim, the hat looks around.
      </p>
      <p className="soft">{CAUTION}</p>
      <div className="sheet-buttons">
        <button type="button" className="strong" onClick={close}>
          back to the flight
        </button>
        <button
          type="button"
          onClick={() => changeSettings({ handStyle: style === 'hold' ? 'stick' : 'hold' })}
        >
          {style === 'hold' ? 'use the stick instead' : 'let the hand hold instead'}
        </button>
        <button type="button" disabled={Object.keys(changed).length === 0} onClick={resetKeys}>
          all keys as they were
        </button>
      </div>
    </SheetOver>
  );
};
