import { ThemeButton } from '../../shown/theme-button.tsx';
import { useStore } from '../../store.ts';
import { flightCommands } from '../run/commands.ts';
import { clockId } from '../scales/meters.ts';
import { ActionButton } from './buttons.tsx';

const RATE_BUTTONS = [
  { action: 'rate-half', rate: 0.5, text: '½', label: '½: half rate' },
  { action: 'rate-1', rate: 1, text: '1', label: '1: normal rate' },
  { action: 'rate-2', rate: 2, text: '2', label: '2: double rate' },
  { action: 'rate-4', rate: 4, text: '4', label: '4: four-fold rate' },
] as const;

const Title = () => {
  const headline = useStore((s) => s.headline);
  const picture = useStore((s) => s.settings.picture);
  return (
    <div className="bar-title">
      <h1>{headline?.exercise ?? 'Lapwing'}</h1>
      <p className="soft">
        {headline ? `${headline.aerodrome} · runway ${headline.runway} · ` : 'one circuit, flown and read'}
        {headline ? <span className="unbroken">{headline.side}</span> : null}
        {headline && picture === 'whiteboard' ? (
          <>
            {' · '}
            <span className="unbroken">{headline.wind}</span>
          </>
        ) : null}
      </p>
    </div>
  );
};

const Where = () => {
  const leg = useStore((s) => s.leg);
  const next = useStore((s) => s.next);
  const picture = useStore((s) => s.settings.picture);
  if (picture !== 'whiteboard') return <div className="bar-where" />;
  return (
    <div className="bar-where">
      <p className="bar-leg">{leg}</p>
      <p className="soft">{next}</p>
    </div>
  );
};

const Time = () => {
  const frozen = useStore((s) => s.frozen);
  const begun = useStore((s) => s.begun);
  const rate = useStore((s) => s.rate);
  const ready = useStore((s) => s.ready);
  return (
    <fieldset className="bar-time" aria-label="Time">
      <ActionButton
        action="freeze"
        label={begun ? 'Freeze, or go on' : 'Begin'}
        pressed={frozen && ready}
        disabled={!ready}
        className="freeze"
      >
        {frozen ? (begun ? 'go on' : 'begin') : 'freeze'}
      </ActionButton>
      <span className="joined">
        {RATE_BUTTONS.map((b) => (
          <ActionButton
            key={b.action}
            action={b.action}
            label={b.label}
            pressed={rate === b.rate}
            disabled={!ready}
          >
            {b.text}
          </ActionButton>
        ))}
      </span>
      <ActionButton action="step-back" label="Back 10 s" disabled={!ready}>
        back 10 s
      </ActionButton>
      <output className="clock" id={clockId} aria-label="Time flown">
        00:00
      </output>
    </fieldset>
  );
};

/** Exercise and place, leg and next gate, time, and the doors to the other sheets. */
export const TopBar = () => {
  const ready = useStore((s) => s.ready);
  const pilot = useStore((s) => s.pilot);
  const sound = useStore((s) => s.sound);
  return (
    <header className="bar">
      <Title />
      <Where />
      <Time />
      <div className="bar-doors">
        <ActionButton
          action="take-over"
          label={pilot === 'model' ? 'Take over' : 'Watch it flown by the model pilot'}
          disabled={!ready}
          className={pilot === 'model' ? 'strong' : ''}
        >
          {pilot === 'model' ? 'take over' : 'watch'}
        </ActionButton>
        <a className="button" href="#brief">
          brief
        </a>
        <a className="button" href="#exercises">
          exercises
        </a>
        <a className="button" href="#logbook">
          logbook
        </a>
        <button type="button" onClick={() => useStore.setState({ sheet: 'setup' })}>
          set up
        </button>
        <button
          type="button"
          aria-label={sound ? 'Sound off' : 'Sound on'}
          aria-pressed={sound}
          onClick={() => flightCommands()?.setSound(!sound)}
        >
          sound
        </button>
        <ThemeButton />
        <ActionButton action="help">?</ActionButton>
      </div>
    </header>
  );
};
