import { type FormEvent, useState } from 'react';
import { goTo } from '../route.ts';
import { ChoiceField, TextField } from '../shown/field.tsx';
import { changeSettings } from '../store.ts';
import { forgetAerodrome, keepAerodrome, useOwnPlaces } from './own-places.ts';
import {
  aerodromeOfDraft,
  draftOfAerodrome,
  type EndDraft,
  NEW_RUNWAY,
  otherDesignator,
  RUNWAY_READERS,
  type RunwayDraft,
  runwayWrongs,
} from './runway-draft.ts';

const SIDES = [
  ['left', 'left-hand'],
  ['right', 'right-hand'],
] as const;

interface EndProps {
  readonly name: string;
  readonly draft: EndDraft;
  readonly wrongs: Partial<Record<keyof EndDraft, string>>;
  readonly onChange: (changes: Partial<EndDraft>) => void;
}

const EndFields = ({ name, draft, wrongs, onChange }: EndProps) => (
  <fieldset className="own-end">
    <legend>Landing on {name}</legend>
    <ChoiceField label="Circuit" value={draft.side} choices={SIDES} onChange={(side) => onChange({ side })} />
    <TextField
      label="Displaced threshold, m"
      value={draft.displaced}
      wrong={wrongs.displaced}
      onChange={(displaced) => onChange({ displaced })}
    />
    <ChoiceField
      label="Slope lights"
      value={draft.lights}
      choices={[
        ['none', 'none'],
        ['PAPI', 'PAPI, four units'],
        ['APAPI', 'APAPI, two units'],
      ]}
      onChange={(lights) => onChange({ lights })}
    />
    {draft.lights === 'none' ? null : (
      <>
        <TextField
          label="Their angle, °"
          value={draft.lightsAngle}
          wrong={wrongs.lightsAngle}
          onChange={(lightsAngle) => onChange({ lightsAngle })}
        />
        <ChoiceField
          label="On the"
          value={draft.lightsSide}
          choices={[
            ['left', 'left of the runway'],
            ['right', 'right of the runway'],
          ]}
          onChange={(lightsSide) => onChange({ lightsSide })}
        />
        <TextField
          label="Past the threshold, m"
          value={draft.lightsPast}
          wrong={wrongs.lightsPast}
          placeholder="as usual"
          onChange={(lightsPast) => onChange({ lightsPast })}
        />
      </>
    )}
    <TextField
      label="Aim point past it, m"
      value={draft.aim}
      wrong={wrongs.aim}
      placeholder="as usual"
      onChange={(aim) => onChange({ aim })}
    />
  </fieldset>
);

/** The designator if it can be read, else what an end is called without one. */
const named = (text: string, other: boolean): string => {
  try {
    const designator = RUNWAY_READERS.designator(text);
    return other ? otherDesignator(designator) : designator;
  } catch {
    return other ? 'the other end' : 'this end';
  }
};

interface FormProps {
  readonly onSaid: (sentence: string) => void;
}

/** One's own runway, both ends, checked as typed. */
export const RunwayForm = ({ onSaid }: FormProps) => {
  const { aerodromes } = useOwnPlaces();
  const [editing, setEditing] = useState('');
  const [draft, setDraft] = useState<RunwayDraft>(NEW_RUNWAY);
  const [wrong, setWrong] = useState('');
  const wrongs = runwayWrongs(draft);
  const change = (changes: Partial<RunwayDraft>) => {
    setWrong('');
    setDraft((before) => ({ ...before, ...changes }));
  };
  const changeEnd = (end: 0 | 1, changes: Partial<EndDraft>) =>
    change({
      ends: draft.ends.map((each, i) => (i === end ? { ...each, ...changes } : each)) as [EndDraft, EndDraft],
    });
  const open = (id: string) => {
    const found = aerodromes.find((each) => each.id === id);
    setEditing(found?.id ?? '');
    setDraft(found ? draftOfAerodrome(found) : NEW_RUNWAY);
    setWrong('');
  };
  const keep = (): boolean => {
    try {
      const aerodrome = aerodromeOfDraft(draft);
      if (editing !== '' && editing !== aerodrome.id) forgetAerodrome(editing);
      const kept = keepAerodrome(aerodrome);
      setEditing(aerodrome.id);
      changeSettings({ aerodrome: aerodrome.id, runway: '', circuit: null });
      onSaid(
        kept
          ? `${aerodrome.title} is kept in this browser.`
          : 'The browser keeps nothing for this page; it lasts for this visit.',
      );
      return true;
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
      return false;
    }
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (keep()) goTo('brief');
  };
  const text = (key: keyof typeof RUNWAY_READERS) => ({
    value: draft[key],
    wrong: wrongs.runway[key],
    onChange: (value: string) => change({ [key]: value }),
  });
  return (
    <form className="own-form" onSubmit={submit} noValidate aria-labelledby="own-runway">
      <div className="own-title">
        <h2 id="own-runway">My runway</h2>
        {aerodromes.length === 0 ? null : (
          <ChoiceField
            label="Open"
            value={editing}
            choices={[['', 'a new one'], ...aerodromes.map((each) => [each.id, each.title] as const)]}
            onChange={open}
          />
        )}
      </div>
      <fieldset className="own-fields">
        <legend className="only-heard">The strip</legend>
        <TextField label="Name" numeric={false} {...text('title')} placeholder="my home field" />
        <TextField label="Runway, one end" {...text('designator')} placeholder="22" />
        <TextField label="Heading there, °M" {...text('heading')} hint="empty: as painted" />
        <TextField label="Length, m" {...text('length')} hint="or feet: 3000 ft" />
        <TextField label="Width, m" {...text('width')} />
        <ChoiceField
          label="Surface"
          value={draft.surface}
          choices={[
            ['tarmac', 'tarmac'],
            ['grass', 'grass'],
          ]}
          onChange={(surface) => change({ surface })}
        />
        <TextField label="Elevation, ft" {...text('elevation')} />
        <TextField
          label="Slope, %"
          {...text('slope')}
          hint={`up is plus, landing on ${named(draft.designator, false)}`}
        />
        <TextField label="Variation, ° east" {...text('variation')} hint="west is minus" />
        <TextField label="Circuit height, ft" {...text('circuitHeight')} hint="above the aerodrome" />
        <ChoiceField
          label="Ground around"
          value={draft.terrain}
          choices={[
            ['open', 'open fields'],
            ['roughly-open', 'hedges, scattered trees'],
            ['rough', 'woods, hills, houses'],
          ]}
          onChange={(terrain) => change({ terrain })}
        />
      </fieldset>
      <div className="own-ends">
        {([0, 1] as const).map((end) => (
          <EndFields
            key={end}
            name={named(draft.designator, end === 1)}
            draft={draft.ends[end]}
            wrongs={wrongs.ends[end] ?? {}}
            onChange={(changes) => changeEnd(end, changes)}
          />
        ))}
      </div>
      <details>
        <summary>How the circuit is flown there</summary>
        <fieldset className="own-fields">
          <legend className="only-heard">How the circuit is flown there</legend>
          <TextField label="Downwind spacing, NM" {...text('spacing')} />
          <ChoiceField
            label="Descent begins"
            value={draft.descentFrom}
            choices={[
              ['abeam', 'abeam the threshold'],
              ['base-turn', 'in the base turn'],
            ]}
            onChange={(descentFrom) => change({ descentFrom })}
          />
          <TextField label="Approach, °" {...text('approach')} />
          <TextField label="Crosswind turn from, ft" {...text('crosswindTurn')} />
          <TextField label="Final turn complete by, ft" {...text('finalTurnDone')} hint="empty: no rule" />
          <ChoiceField
            label="What is taught"
            value={draft.teaching}
            choices={[
              ['power-for-sink', 'power for sink, pitch for speed'],
              ['point-with-pitch', 'point with pitch, speed with power'],
            ]}
            onChange={(teaching) => change({ teaching })}
          />
        </fieldset>
      </details>
      <p className="wrong" role="alert">
        {wrong}
      </p>
      <div className="own-buttons">
        <button type="submit" className="strong">
          keep it and brief
        </button>
        <button type="button" onClick={keep}>
          keep it
        </button>
        {editing === '' ? null : (
          <button
            type="button"
            onClick={() => {
              forgetAerodrome(editing);
              onSaid(`${draft.title} is forgotten.`);
              open('');
            }}
          >
            forget it
          </button>
        )}
      </div>
    </form>
  );
};
