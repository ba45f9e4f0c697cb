import { type ChangeEvent, useRef, useState } from 'react';
import { EXERCISES } from '../../exercises.ts';
import type { MetarWeather } from '../../formats/metar.ts';
import { parseWind, parseWindAbove, windText } from '../../formats/wind-text.ts';
import { allowsOwnDay } from '../../lesson/exercises/own-day.ts';
import { inParts } from '../../lesson/exercises/syllabus.ts';
import { mFromFt } from '../../units/conversions.ts';
import { fixed, headingDigits } from '../../units/format.ts';
import { exerciseOfSettings } from '../exercise-flight.ts';
import { chosen, everyAerodrome, everyAeroplane } from '../fly/sheets/choices.ts';
import { numberIn } from '../fly/sheets/scenario-of-settings.ts';
import { useOwnPlaces } from '../own/own-places.ts';
import { fetchPart } from '../parts/fetch-part.ts';
import type { Settings } from '../settings.ts';
import { Field } from '../shown/field.tsx';
import { changeSettings, useStore } from '../store.ts';
import { anySeed, chooseExercise } from '../train.ts';

type TextSetting = 'wind' | 'windAbove' | 'temperature' | 'qnh';

/** Throws an Error sentence where the text cannot be used. */
const CHECKS: Readonly<Record<TextSetting, (text: string) => unknown>> = {
  wind: (text) => parseWind(text, 'wind'),
  windAbove: (text) => parseWindAbove(text, 'wind at circuit height'),
  temperature: (text) => numberIn('temperature', text, -60, 60, 0),
  qnh: (text) => numberIn('QNH', text, 850, 1090, 0),
};

const problem = (name: TextSetting, text: string): string => {
  try {
    CHECKS[name](text);
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

interface Report {
  readonly text: string;
  readonly says: string;
  readonly wrong: boolean;
  /** Why nobody would fly circuits in it; empty on a day for them. */
  readonly warns: string;
}

const NO_REPORT: Report = { text: '', says: '', wrong: false, warns: '' };

const choose = async (id: string): Promise<void> => {
  if (id === '') changeSettings({ exercise: '' });
  else await chooseExercise(id);
};

const metarWords = (seen: MetarWeather): string => {
  const gust = seen.gustKt === null ? '' : ` gusting ${seen.gustKt}`;
  const wind =
    seen.windKt === 0
      ? 'calm'
      : `wind ${headingDigits(seen.windFromDegT)} true is ${headingDigits(seen.windFromDegM)} magnetic, ${seen.windKt} kt${gust}`;
  const rest = [
    seen.temperatureC === null ? 'no temperature: standard' : `${seen.temperatureC} °C`,
    seen.qnhHpa === null ? 'no pressure: as it was' : `QNH ${fixed(seen.qnhHpa)}`,
    seen.leftAside.length === 0 ? '' : `left aside: ${seen.leftAside.join(' ')}`,
  ];
  return `${[wind, ...rest].filter((each) => each !== '').join('; ')}.`;
};

/** What a report changes of the day. */
const settingsOf = (seen: MetarWeather): Partial<Settings> => ({
  wind: windText(seen),
  // A forecast of another hour is not this report's
  windAbove: '',
  temperature: seen.temperatureC === null ? '' : String(seen.temperatureC),
  dewPoint: seen.dewPointC === null ? '' : String(seen.dewPointC),
  ...(seen.qnhHpa !== null && { qnh: String(seen.qnhHpa) }),
});

/** Where, with what, in what weather: typed or from a pasted report. A change that can be used is used at once. */
export const DayFields = () => {
  useOwnPlaces();
  const settings = useStore((s) => s.settings);
  const [drafts, setDrafts] = useState<Partial<Record<TextSetting, string>>>({});
  const [metar, setMetar] = useState(NO_REPORT);
  const newest = useRef('');
  const exercise = exerciseOfSettings(settings);
  const anyDay = exercise === null || allowsOwnDay(exercise);
  // An exercise that brings its own day leaves nothing to type
  const drawn = exercise !== null && !(anyDay && settings.inMyWeather);
  const place = chosen(everyAerodrome(), exercise?.aerodrome ?? settings.aerodrome);
  const wrongs = (Object.keys(drafts) as TextSetting[])
    .map((name) => problem(name, drafts[name] as string))
    .filter((sentence) => sentence !== '');

  const text = (name: TextSetting) => ({
    value: drafts[name] ?? settings[name],
    'aria-invalid': drafts[name] !== undefined && problem(name, drafts[name] as string) !== '',
    'aria-describedby': 'day-wrong',
    spellCheck: false,
    onChange: (event: ChangeEvent<HTMLInputElement>) => {
      const value = event.target.value;
      if (problem(name, value) === '') {
        setDrafts(({ [name]: _, ...rest }) => rest);
        // What was reported is no longer what is flown
        setMetar(NO_REPORT);
        changeSettings({ [name]: value });
      } else setDrafts((before) => ({ ...before, [name]: value }));
    },
  });

  const readMetar = async (typed: string) => {
    newest.current = typed;
    setMetar({ ...NO_REPORT, text: typed });
    if (typed.trim() === '') return;
    try {
      const { parseMetarText, hazards } = await fetchPart(
        'formats/metar.ts',
        () => import('../../formats/metar.ts'),
      );
      // Typed on meanwhile: a later call has the whole of it.
      if (newest.current !== typed) return;
      const seen = parseMetarText(typed, place.variationDegE);
      setDrafts({});
      changeSettings({ ...settingsOf(seen), runway: '' });
      const against = hazards(seen.inForce, mFromFt(place.circuitHeightFt));
      const warns =
        against.length === 0
          ? ''
          : `Not a day for circuits: ${against.join(', ')}. It can be flown here all the same.`;
      setMetar({ text: typed, says: metarWords(seen), wrong: false, warns });
    } catch (error) {
      setMetar({
        ...NO_REPORT,
        text: typed,
        says: error instanceof Error ? error.message : String(error),
        wrong: true,
      });
    }
  };

  return (
    <form className="day no-print" onSubmit={(event) => event.preventDefault()} aria-label="The day">
      <Field label="Exercise">
        {(ids) => (
          <select {...ids} value={exercise?.id ?? ''} onChange={(e) => void choose(e.target.value)}>
            <option value="">the circuit as set up here</option>
            {inParts(EXERCISES).map((part) => (
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
        <Field label="Its weather">
          {(ids) => (
            <select
              {...ids}
              value={drawn ? 'own' : 'mine'}
              disabled={!anyDay}
              title={anyDay ? undefined : 'This weather is what the exercise is about.'}
              onChange={(e) => changeSettings({ inMyWeather: e.target.value === 'mine' })}
            >
              <option value="own">its own, drawn</option>
              <option value="mine">as typed here</option>
            </select>
          )}
        </Field>
      )}
      {exercise === null ? null : (
        <button
          type="button"
          className="day-draw"
          onClick={() => changeSettings({ exerciseSeed: anySeed() })}
        >
          draw it anew
        </button>
      )}
      <Field label="Aerodrome">
        {(ids) => (
          <select
            {...ids}
            value={place.id}
            disabled={exercise?.aerodrome !== undefined}
            onChange={(e) => changeSettings({ aerodrome: e.target.value, runway: '', circuit: null })}
          >
            {everyAerodrome().map((each) => (
              <option key={each.id} value={each.id}>
                {each.title}
                {each.id.startsWith('own-') ? ' (entered by you)' : ''}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Runway" hidden={drawn}>
        {(ids) => (
          <select
            {...ids}
            value={settings.runway}
            onChange={(e) => changeSettings({ runway: e.target.value, circuit: null })}
          >
            <option value="">by the wind</option>
            {place.runway.ends.map((end) => (
              <option key={end.designator} value={end.designator}>
                {end.designator}, {end.circuitSide}-hand
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Aeroplane">
        {(ids) => (
          <select
            {...ids}
            value={chosen(everyAeroplane(), settings.aeroplane).id}
            onChange={(e) => changeSettings({ aeroplane: e.target.value })}
          >
            {everyAeroplane().map((each) => (
              <option key={each.id} value={each.id}>
                {each.title}
                {each.id.startsWith('own-') ? ' (your card)' : ''}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Wind, °M/kt" className="short" hidden={drawn}>
        {(ids) => <input {...ids} {...text('wind')} placeholder="220/15g25" />}
      </Field>
      <Field label="At circuit height" className="short" hidden={drawn}>
        {(ids) => <input {...ids} {...text('windAbove')} placeholder="worked out" />}
      </Field>
      <Field label="Temp, °C" className="shorter" hidden={drawn}>
        {(ids) => <input {...ids} {...text('temperature')} inputMode="decimal" placeholder="standard" />}
      </Field>
      <Field label="QNH, hPa" className="shorter" hidden={drawn}>
        {(ids) => <input {...ids} {...text('qnh')} inputMode="decimal" placeholder="1013.25" />}
      </Field>
      <Field label="or paste a METAR" className="wide" hidden={drawn}>
        {(ids) => (
          <input
            {...ids}
            value={metar.text}
            spellCheck={false}
            autoComplete="off"
            aria-invalid={metar.wrong}
            aria-describedby="day-metar"
            placeholder="24012G22KT 9999 SCT025 18/12 Q1014"
            onChange={(e) => void readMetar(e.target.value)}
          />
        )}
      </Field>
      <p className={metar.wrong ? 'wrong' : 'soft'} id="day-metar" role="status">
        {drawn ? '' : metar.says}
      </p>
      <p className="warn" role="alert">
        {drawn ? '' : metar.warns}
      </p>
      <p className="wrong" id="day-wrong" role="alert">
        {wrongs.join(' · ')}
      </p>
    </form>
  );
};
