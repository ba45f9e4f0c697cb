import { type FormEvent, type ReactNode, useId, useState } from 'react';
import { parseWind } from '../../formats/wind-text.ts';
import type { Settings } from '../settings.ts';
import { changeSettings, useStore } from '../store.ts';
import { chosen, everyAerodrome, everyAeroplane } from './choices.ts';
import { flightCommands } from './commands.ts';
import { SheetOver } from './sheet.tsx';

const STARTS: readonly Settings['start'][] = ['line-up', 'upwind', 'crosswind', 'downwind', 'base', 'final'];
const PICTURES: readonly {
  readonly id: Settings['picture'];
  readonly text: string;
  readonly says: string;
}[] = [
  { id: 'whiteboard', text: 'whiteboard', says: 'everything, as on the briefing board' },
  {
    id: 'cockpit-with-plan',
    text: 'cockpit, plan on a key',
    says: 'hold P to look at the plan; looks are counted',
  },
  { id: 'cockpit', text: 'cockpit only', says: 'window, instruments and lights, as in the air' },
];

interface FieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly children: (ids: { readonly id: string; readonly 'aria-describedby': string }) => ReactNode;
}

const Field = ({ label, hint, children }: FieldProps) => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children({ id, 'aria-describedby': `${id}-hint` })}
      <small id={`${id}-hint`}>{hint}</small>
    </div>
  );
};

const windProblem = (wind: string): string => {
  try {
    parseWind(wind, 'wind');
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

/** Aeroplane, place, day, start and help. What is wrong is said in the command line's own sentences. */
export const SetupSheet = () => {
  const kept = useStore((s) => s.settings);
  const [draft, setDraft] = useState<Settings>(kept);
  const [wrong, setWrong] = useState('');
  const place = chosen(everyAerodrome(), draft.aerodrome);
  const badWind = windProblem(draft.wind);
  const change = (changes: Partial<Settings>) => {
    setWrong('');
    setDraft((before) => ({ ...before, ...changes }));
  };
  const close = () => useStore.setState({ sheet: null });
  const goOnWithThese = () => {
    const { picture, handStyle, arrowsAsStick } = draft;
    changeSettings({ picture, handStyle, arrowsAsStick });
    close();
  };
  const begin = (event: FormEvent) => {
    event.preventDefault();
    if (badWind) {
      setWrong(badWind);
      return;
    }
    const before = useStore.getState();
    changeSettings(draft);
    if (flightCommands()?.prepare()) {
      close();
      return;
    }
    const now = useStore.getState();
    setWrong(now.notice || now.failed);
    if (before.ready) changeSettings({ ...kept });
  };
  return (
    <SheetOver title="Set up a flight" onClose={close} className="sheet-setup">
      <form onSubmit={begin} noValidate>
        <div className="fields">
          <Field label="Aeroplane" hint={chosen(everyAeroplane(), draft.aeroplane).description}>
            {(ids) => (
              <select
                {...ids}
                value={chosen(everyAeroplane(), draft.aeroplane).id}
                onChange={(e) => change({ aeroplane: e.target.value })}
              >
                {everyAeroplane().map((each) => (
                  <option key={each.id} value={each.id}>
                    {each.title}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Field label="Aerodrome" hint={place.description}>
            {(ids) => (
              <select
                {...ids}
                value={place.id}
                onChange={(e) => change({ aerodrome: e.target.value, runway: '', circuit: null })}
              >
                {everyAerodrome().map((each) => (
                  <option key={each.id} value={each.id}>
                    {each.title}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Field label="Runway">
            {(ids) => (
              <select {...ids} value={draft.runway} onChange={(e) => change({ runway: e.target.value })}>
                <option value="">by the wind</option>
                {place.runway.ends.map((end) => (
                  <option key={end.designator} value={end.designator}>
                    {end.designator}, {end.circuitSide}-hand
                  </option>
                ))}
              </select>
            )}
          </Field>
          <Field label="Wind" hint="from, degrees magnetic / knots: 220/08 or 220/15g25; calm is 000/00">
            {(ids) => (
              <input
                {...ids}
                value={draft.wind}
                onChange={(e) => change({ wind: e.target.value })}
                aria-invalid={badWind !== ''}
                spellCheck={false}
              />
            )}
          </Field>
          <Field label="Turbulence">
            {(ids) => (
              <select
                {...ids}
                value={draft.turbulence}
                onChange={(e) => change({ turbulence: e.target.value as Settings['turbulence'] })}
              >
                <option>none</option>
                <option>light</option>
                <option>moderate</option>
              </select>
            )}
          </Field>
          <Field label="Temperature, °C" hint="empty: standard for this elevation">
            {(ids) => (
              <input
                {...ids}
                value={draft.temperature}
                inputMode="decimal"
                onChange={(e) => change({ temperature: e.target.value })}
              />
            )}
          </Field>
          <Field label="QNH, hPa" hint="empty: 1013.25">
            {(ids) => (
              <input
                {...ids}
                value={draft.qnh}
                inputMode="decimal"
                onChange={(e) => change({ qnh: e.target.value })}
              />
            )}
          </Field>
          <Field label="Begin on" hint="the legs begin trimmed, at roll-out">
            {(ids) => (
              <select
                {...ids}
                value={draft.start}
                onChange={(e) => change({ start: e.target.value as Settings['start'] })}
              >
                {STARTS.map((start) => (
                  <option key={start}>{start}</option>
                ))}
              </select>
            )}
          </Field>
          <Field label="Seed" hint="the same seed gives the same gusts">
            {(ids) => (
              <input
                {...ids}
                value={draft.seed}
                inputMode="numeric"
                onChange={(e) => change({ seed: e.target.value })}
              />
            )}
          </Field>
          <fieldset className="choices">
            <legend>How much is shown</legend>
            {PICTURES.map((each) => (
              <label key={each.id}>
                <input
                  type="radio"
                  name="picture"
                  checked={draft.picture === each.id}
                  onChange={() => change({ picture: each.id })}
                />
                <span>
                  {each.text} <small>{each.says}</small>
                </span>
              </label>
            ))}
          </fieldset>
          <fieldset className="choices">
            <legend>How it is flown</legend>
            <label>
              <input
                type="checkbox"
                checked={draft.handStyle === 'hold'}
                onChange={(e) => change({ handStyle: e.target.checked ? 'hold' : 'stick' })}
              />
              <span>the hand holds the attitude</span>
            </label>
            <label>
              <input
                type="checkbox"
                checked={draft.rudderAssist}
                onChange={(e) => change({ rudderAssist: e.target.checked })}
              />
              <span>the feet keep it balanced</span>
            </label>
            <label>
              <input
                type="checkbox"
                checked={draft.arrowsAsStick}
                onChange={(e) => change({ arrowsAsStick: e.target.checked })}
              />
              <span>lower arrow pulls, as on a stick</span>
            </label>
          </fieldset>
        </div>
        <p className="wrong" id="setup-wrong" role="alert">
          {wrong || badWind}
        </p>
        <div className="sheet-buttons">
          <button type="submit" className="strong">
            roll it out
          </button>
          <button type="button" onClick={goOnWithThese}>
            keep this flight, change what is shown and held
          </button>
          <button type="button" onClick={close}>
            leave it as it is
          </button>
        </div>
      </form>
    </SheetOver>
  );
};
