import { ACTION_GROUPS, ACTIONS } from '../../input/actions.ts';
import { changeSettings, useStore } from '../store.ts';
import { KeyCap } from './key-cap.tsx';
import { SheetOver } from './sheet.tsx';
import { CAUTION } from './start-sheet.tsx';

/** Every key, by what it is for; and how the hand behaves. */
export const HelpSheet = () => {
  const style = useStore((s) => s.settings.handStyle);
  const close = () => useStore.setState({ sheet: null });
  return (
    <SheetOver title="The keys" onClose={close} className="sheet-help">
      <div className="key-groups">
        {ACTION_GROUPS.map((group) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl>
              {ACTIONS.filter((action) => action.group === group).map((action) => (
                <div key={action.id}>
                  <dt>
                    {action.keys.map((key) => (
                      <KeyCap key={key} name={key} />
                    ))}
                  </dt>
                  <dd>{action.label}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
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
      </div>
    </SheetOver>
  );
};
