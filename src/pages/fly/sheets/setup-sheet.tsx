import { type FormEvent, useMemo, useState } from 'react';
import { parseWind, windText } from '../../../formats/wind-text.ts';
import { JUDGED_EXERCISES } from '../../../judged-exercises.ts';
import { inParts } from '../../../lesson/exercises/syllabus.ts';
import type { Scenario } from '../../../simulation/scenario.ts';
import { fixed } from '../../../units/format.ts';
import { exercisesNow, loadExercises } from '../../exercises-room.ts';
import type { Settings } from '../../settings.ts';
import { ChoiceField, Field } from '../../shown/field.tsx';
import { changeSettings, useStore } from '../../store.ts';
import { anySeed } from '../../train.ts';
import { flightCommands } from '../run/commands.ts';
import { chosen, everyAerodrome, everyAeroplane } from './choices.ts';
import { SheetOver } from './sheet.tsx';
import { ToleranceFields } from './tolerance-fields.tsx';
import { suiting, WHO } from './who-flies.ts';

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

const windProblem = (wind: string): string => {
  try {
    parseWind(wind, 'wind');
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

/** The flight of the chosen exercise as its seed draws it; null where that is still to come. */
const drawnOf = (draft: Settings): Scenario | null => {
  const room = exercisesNow();
  const exercise = room?.exerciseOfSettings(draft) ?? null;
  if (!room || !exercise) return null;
  try {
    return room.exerciseFlight(exercise, { ...draft, inMyWeather: false });
  } catch {
    // What is wrong is said when it is rolled out
    return null;
  }
};

/** Aeroplane, place, day, start and help. What is wrong is said in the command line's own sentences. */
export const SetupSheet = () => {
  const kept = useStore((s) => s.settings);
  const [draft, setDraft] = useState<Settings>(kept);
  const [wrong, setWrong] = useState('');
  const badWind = windProblem(draft.wind);
  const exercise = JUDGED_EXERCISES.find(({ id }) => id === draft.exercise) ?? null;
  const place = chosen(everyAerodrome(), exercise?.aerodrome ?? draft.aerodrome);
  const anyDay = exercise === null || exercise.anyDay;
  // An exercise that brings its own day or start leaves nothing to choose there
  const ownDay = exercise !== null && !(anyDay && draft.inMyWeather);
  // Another exercise is drawn anew when it is rolled out
  const { exercise: drawnId, exerciseSeed, aeroplane, aerodrome } = draft;
  const drawn = useMemo(
    () =>
      ownDay && drawnId === kept.exercise
        ? drawnOf({ ...kept, exercise: drawnId, exerciseSeed, aeroplane, aerodrome })
        : null,
    [ownDay, kept, drawnId, exerciseSeed, aeroplane, aerodrome],
  );
  const change = (changes: Partial<Settings>) => {
    setWrong('');
    setDraft((before) => ({ ...before, ...changes }));
  };
  const close = () => useStore.setState({ sheet: null });
  const goOnWithThese = () => {
    const { who, picture, lead, handStyle, arrowsAsStick, coach, tolerances, voice, touch } = draft;
    changeSettings({ who, picture, lead, handStyle, arrowsAsStick, coach, tolerances, voice, touch });
    close();
  };
  const begin = async (event: FormEvent) => {
    event.preventDefault();
    if (badWind && !ownDay) {
      setWrong(badWind);
      return;
    }
    const before = useStore.getState();
    if (exercise !== null) {
      try {
        await loadExercises();
      } catch (error) {
        setWrong(error instanceof Error ? error.message : String(error));
        return;
      }
    }
    changeSettings(exercise?.id === kept.exercise ? draft : { ...draft, exerciseSeed: anySeed() });
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
      <form onSubmit={(event) => void begin(event)} noValidate>
        <div className="fields">
          <Field
            label="Exercise"
            hint={
              exercise === null
                ? 'each has its own start, and says what is looked at'
                : 'it begins where its aim asks for'
            }
          >
            {(ids) => (
              <select
                {...ids}
                value={exercise?.id ?? ''}
                onChange={(e) => change({ exercise: e.target.value, inMyWeather: false })}
              >
                <option value="">none: the circuit as set up here</option>
                {inParts(JUDGED_EXERCISES).map((part) => (
                  <optgroup key={part.title} label={part.title}>
                    {part.exercises.map((each) => (
                      <option key={each.id} value={each.id}>
                        {each.title}
                      </option>
                    ))}
                  </optgroup>
                ))}
              </select>
            )}
          </Field>
          {exercise === null ? null : (
            <Field label="Its weather" hint={anyDay ? '' : 'this weather is what it is about'}>
              {(ids) => (
                <select
                  {...ids}
                  value={ownDay ? 'own' : 'mine'}
                  disabled={!anyDay}
                  onChange={(e) => change({ inMyWeather: e.target.value === 'mine' })}
                >
                  <option value="own">its own, drawn for it</option>
                  <option value="mine">as set up here</option>
                </select>
              )}
            </Field>
          )}
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
                disabled={exercise?.aerodrome !== undefined}
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
          <Field label="Runway" hint="">
            {(ids) => (
              <select
                {...ids}
                value={ownDay ? '' : draft.runway}
                disabled={ownDay}
                onChange={(e) => change({ runway: e.target.value })}
              >
                <option value="">by the wind{drawn ? `: ${drawn.runway}` : ''}</option>
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
                value={ownDay ? (drawn ? windText(drawn.weather) : '') : draft.wind}
                placeholder={ownDay ? 'as it is drawn' : ''}
                disabled={ownDay}
                onChange={(e) => change({ wind: e.target.value })}
                aria-invalid={!ownDay && badWind !== ''}
                spellCheck={false}
              />
            )}
          </Field>
          <Field
            label="Wind at circuit height"
            hint="where a forecast says it, like 240/18; empty: worked out"
          >
            {(ids) => (
              <input
                {...ids}
                value={ownDay ? '' : draft.windAbove}
                disabled={ownDay}
                onChange={(e) => change({ windAbove: e.target.value })}
                spellCheck={false}
              />
            )}
          </Field>
          <Field label="Turbulence" hint="">
            {(ids) => (
              <select
                {...ids}
                value={drawn?.weather.turbulence ?? draft.turbulence}
                disabled={ownDay}
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
                value={ownDay ? (drawn ? fixed(drawn.weather.temperatureC) : '') : draft.temperature}
                disabled={ownDay}
                inputMode="decimal"
                onChange={(e) => change({ temperature: e.target.value })}
              />
            )}
          </Field>
          <Field label="QNH, hPa" hint="empty: 1013.25">
            {(ids) => (
              <input
                {...ids}
                value={ownDay ? (drawn ? fixed(drawn.weather.qnhHpa) : '') : draft.qnh}
                disabled={ownDay}
                inputMode="decimal"
                onChange={(e) => change({ qnh: e.target.value })}
              />
            )}
          </Field>
          <Field label="Begin on" hint="the legs begin trimmed, at roll-out">
            {(ids) => (
              <select
                {...ids}
                value={exercise === null ? draft.start : ''}
                disabled={exercise !== null}
                onChange={(e) => change({ start: e.target.value as Settings['start'] })}
              >
                {exercise === null ? null : <option value="">where the exercise has it</option>}
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
                value={exercise === null ? draft.seed : String(draft.exerciseSeed)}
                disabled={exercise !== null}
                inputMode="numeric"
                onChange={(e) => change({ seed: e.target.value })}
              />
            )}
          </Field>
          <ChoiceField
            label="Down from"
            hint="as your school teaches it: abeam the threshold (FAA), or level to the base turn (Australia, New Zealand, UK)"
            value={draft.descentTaught}
            choices={[
              ['', 'as the aerodrome has it'],
              ['abeam', 'abeam the threshold'],
              ['base-turn', 'the base turn'],
            ]}
            onChange={(descentTaught) => change({ descentTaught, circuit: null })}
          />
          <ChoiceField
            label="Final turn complete by"
            hint="above the aerodrome; 500 ft is the Australian rule, 300 ft makes room for a 3° slope"
            value={draft.finalDoneTaught}
            choices={[
              ['', 'as the aerodrome has it'],
              ['300', '300 ft'],
              ['500', '500 ft'],
            ]}
            onChange={(finalDoneTaught) => change({ finalDoneTaught, circuit: null })}
          />
          <ChoiceField
            label="Checks and calls"
            hint="to be worked and made on every leg"
            value={draft.radio}
            choices={[
              ['none', 'none, flying only'],
              ['untowered', 'without a tower'],
              ['towered', 'with a tower'],
            ]}
            onChange={(radio) => change({ radio })}
          />
          <ChoiceField
            label="Words of the calls"
            hint=""
            value={draft.callWords}
            choices={[
              ['icao', 'CAP 413, ICAO'],
              ['faa', 'FAA'],
            ]}
            onChange={(callWords) => change({ callWords })}
          />
          <ChoiceField
            label="Others in the circuit"
            hint="flown by model pilots ahead of you"
            value={String(draft.others)}
            choices={[
              ['0', 'nobody'],
              ['1', 'one'],
              ['2', 'two'],
            ]}
            onChange={(others) => change({ others: Number(others) as Settings['others'] })}
          />
          <ChoiceField
            label="Who flies"
            hint={WHO.find(({ id }) => id === draft.who)?.says ?? 'sets coach, tolerances and picture below'}
            value={draft.who}
            choices={[['', 'nobody in particular'], ...WHO.map(({ id, text }) => [id, text] as const)]}
            onChange={(who) => change({ who, ...suiting(who) })}
          />
          <ChoiceField
            label="Coach"
            hint="M silences everything"
            value={draft.coach}
            choices={[
              ['talked-through', 'talks you through'],
              ['reminded', 'reminds you'],
              ['silent', 'is silent'],
            ]}
            onChange={(coach) => change({ coach })}
          />
          <ToleranceFields draft={draft} onChange={change} />
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
          <ChoiceField
            label="Large view"
            hint="of the whiteboard"
            value={draft.lead}
            choices={[
              ['plan', 'the plan'],
              ['window', 'the window'],
            ]}
            disabled={draft.picture !== 'whiteboard'}
            onChange={(lead) => change({ lead })}
          />
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
            <label>
              <input
                type="checkbox"
                checked={draft.surprises}
                onChange={(e) => change({ surprises: e.target.checked })}
              />
              <span>something may wait behind a check</span>
            </label>
            <label>
              <input
                type="checkbox"
                checked={draft.voice}
                onChange={(e) => change({ voice: e.target.checked })}
              />
              <span>coach and tower are spoken aloud</span>
            </label>
            <label>
              <input
                type="checkbox"
                checked={draft.touch === 'always'}
                onChange={(e) => change({ touch: e.target.checked ? 'always' : 'by-screen' })}
              />
              <span>stick and levers on the screen</span>
            </label>
          </fieldset>
        </div>
        <p className="wrong" id="setup-wrong" role="alert">
          {wrong || (ownDay ? '' : badWind)}
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
