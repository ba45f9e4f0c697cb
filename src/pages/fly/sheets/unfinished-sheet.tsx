import type { UnfinishedFlight } from '../../../storage/logbook.ts';
import { clockText } from '../../../units/format.ts';
import { dayText } from '../../shown/when.ts';
import { useStore } from '../../store.ts';
import { flightCommands } from '../run/commands.ts';
import { forgetUnfinished } from '../run/unfinished.ts';
import { SheetOver } from './sheet.tsx';

const wordsOf = (flight: UnfinishedFlight): string =>
  `${flight.exercise.replaceAll('-', ' ')} · ${flight.aerodrome} · runway ${flight.runway} · ${flight.aeroplane}`;

const close = () => useStore.setState((s) => ({ sheet: s.settings.seenStart ? null : 'start' }));

/** Flights whose tab was closed, to be gone on with or put away. */
export const UnfinishedSheet = () => {
  const flights = useStore((s) => s.unfinished);
  return (
    <SheetOver title="A flight was left in the air" onClose={close} className="sheet-unfinished">
      <ul className="unfinished">
        {flights.map((flight, i) => (
          <li key={flight.id}>
            <p>
              <strong>{wordsOf(flight)}</strong>
              <br />
              <span className="soft">
                {flight.pilot}, {dayText(flight.when)}, {clockText(flight.flightS)} flown
              </span>
            </p>
            <button
              type="button"
              className="strong"
              {...(i === 0 && { 'data-first': true })}
              onClick={() => flightCommands()?.takeUp(flight.id)}
            >
              go on with it
            </button>
            <button
              type="button"
              onClick={() => {
                void forgetUnfinished(flight.id);
                if (flights.length === 1) close();
              }}
            >
              throw it away
            </button>
          </li>
        ))}
      </ul>
      <div className="sheet-buttons">
        <button type="button" onClick={close}>
          later
        </button>
      </div>
    </SheetOver>
  );
};
