import { useStore } from '../../store.ts';
import { ActionButton } from '../bar/buttons.tsx';
import { flightCommands } from '../run/commands.ts';
import { type ShownCheck, type ShownItem, useProcedures } from './shown-procedures.ts';

const Line = ({ item, frozen }: { readonly item: ShownItem; readonly frozen: boolean }) => (
  <li className={`card-check ${item.wrong ? 'card-wrong' : ''}`}>
    <label>
      <input
        type="checkbox"
        checked={item.done}
        disabled={frozen || item.done || item.how === 'worked' || item.how === 'asked'}
        onChange={() => flightCommands()?.work(item.id)}
      />
      <span>
        {item.text}
        {item.doing && !item.done ? <small> {item.doing}</small> : null}
        {item.note ? <em> {item.note}</em> : null}
        {item.wrong && !item.done ? <em> look again</em> : null}
      </span>
    </label>
    {item.id === 'altimeter' && !item.done ? <Subscale /> : null}
  </li>
);

/** The check of this leg: what is still to do first, so that the next item always stands on top. */
export const CheckLines = ({ check }: { readonly check: ShownCheck }) => {
  const frozen = useStore((s) => s.frozen);
  const open = check.items.filter(({ done }) => !done);
  const done = check.items.filter(({ done }) => done);
  return (
    <>
      <li className="card-title">
        {check.title} check, {check.done} of {check.items.length}
      </li>
      {[...open, ...done].map((item) => (
        <Line key={item.id} item={item} frozen={frozen} />
      ))}
    </>
  );
};

/** The altimeter's subscale, to be turned. */
export const Subscale = () => {
  const subscaleHpa = useProcedures((s) => s.subscaleHpa);
  return (
    <fieldset className="joined small subscale" aria-label="Altimeter subscale">
      <ActionButton action="subscale-down">−</ActionButton>
      <output aria-label="Altimeter set to">{subscaleHpa} hPa</output>
      <ActionButton action="subscale-up">+</ActionButton>
    </fieldset>
  );
};

/** Stopped: the flight ends when the check is done, or at once. */
export const DoneButton = () => {
  const leg = useStore((s) => s.legId);
  return leg === 'stopped' ? (
    <button type="button" className="strong" onClick={() => flightCommands()?.finish()}>
      done
    </button>
  ) : null;
};
