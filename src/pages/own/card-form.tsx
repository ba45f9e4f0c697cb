import { type FormEvent, useState } from 'react';
import { AEROPLANES, DEMO } from '../../catalogue.ts';
import { chosen } from '../fly/sheets/choices.ts';
import { goTo } from '../route.ts';
import { ChoiceField, TextField } from '../shown/field.tsx';
import { changeSettings } from '../store.ts';
import {
  type CardDraft,
  cardOfDraft,
  cardOfModel,
  cardWrongs,
  draftOfCard,
  RPM_NAMES,
  type RpmName,
  SPEED_NAMES,
  type SpeedName,
  STAGE_NAMES,
  type StageName,
} from './card-draft.ts';
import { flownBy, forgetCard, keepCard, useOwnPlaces } from './own-places.ts';

const keys = <K extends string>(names: Readonly<Record<K, string>>): readonly K[] =>
  Object.keys(names) as K[];

interface FormProps {
  readonly onSaid: (sentence: string) => void;
}

/** The speeds, flap plan and powers of one's own aeroplane; the built-in model flies them. */
export const CardForm = ({ onSaid }: FormProps) => {
  const { cards } = useOwnPlaces();
  const [editing, setEditing] = useState('');
  const [draft, setDraft] = useState<CardDraft>(() => cardOfModel(chosen(AEROPLANES, DEMO.aeroplane)));
  const [wrong, setWrong] = useState('');
  const model = chosen(AEROPLANES, draft.flownBy);
  const wrongs = cardWrongs(draft);
  const change = (changes: Partial<CardDraft>) => {
    setWrong('');
    setDraft((before) => ({ ...before, ...changes }));
  };
  const open = (id: string) => {
    const found = cards.find((each) => each.id === id);
    setEditing(found?.id ?? '');
    setDraft(found ? draftOfCard(found) : cardOfModel(chosen(AEROPLANES, DEMO.aeroplane)));
    setWrong('');
  };
  const keep = (): boolean => {
    try {
      const card = cardOfDraft(draft);
      flownBy(card);
      if (editing !== '' && editing !== card.id) forgetCard(editing);
      const kept = keepCard(card);
      setEditing(card.id);
      changeSettings({ aeroplane: card.id });
      onSaid(
        kept
          ? `The card of ${card.title} is kept in this browser.`
          : 'The browser keeps nothing for this page; the card lasts for this visit.',
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
  const stages = model.flap.stages.map((stage, i) => [String(i), i === 0 ? 'up' : `${stage.deg}°`] as const);
  return (
    <form className="own-form" onSubmit={submit} noValidate aria-labelledby="own-card">
      <div className="own-title">
        <h2 id="own-card">My numbers</h2>
        {cards.length === 0 ? null : (
          <ChoiceField
            label="Open"
            value={editing}
            choices={[['', 'a new card'], ...cards.map((each) => [each.id, each.title] as const)]}
            onChange={open}
          />
        )}
      </div>
      <p className="soft">
        The built-in model flies; the speeds, flap plan and powers of this card are what is briefed and
        assessed.
      </p>
      <fieldset className="own-fields">
        <legend className="only-heard">The card</legend>
        <TextField
          label="Name"
          numeric={false}
          value={draft.title}
          wrong={wrongs.card.title}
          onChange={(title) => change({ title })}
          placeholder="our trainer"
        />
        <ChoiceField
          label="Flown by"
          value={model.id}
          choices={AEROPLANES.map((each) => [each.id, each.title] as const)}
          onChange={(id) => change({ ...cardOfModel(chosen(AEROPLANES, id)), title: draft.title })}
        />
        <TextField
          label="Crosswind limit, kt"
          value={draft.crosswind}
          wrong={wrongs.card.crosswind}
          onChange={(crosswind) => change({ crosswind })}
        />
        <TextField
          label="Tailwind limit, kt"
          value={draft.tailwind}
          wrong={wrongs.card.tailwind}
          onChange={(tailwind) => change({ tailwind })}
        />
      </fieldset>
      <fieldset className="own-fields own-narrow">
        <legend>Speeds, kt indicated</legend>
        {keys<SpeedName>(SPEED_NAMES).map((key) => (
          <TextField
            key={key}
            label={SPEED_NAMES[key]}
            value={draft.speeds[key]}
            wrong={wrongs.speeds[key]}
            onChange={(value) => change({ speeds: { ...draft.speeds, [key]: value } })}
          />
        ))}
      </fieldset>
      <fieldset className="own-fields own-narrow">
        <legend>Flap</legend>
        {keys<StageName>(STAGE_NAMES).map((key) => (
          <ChoiceField
            key={key}
            label={STAGE_NAMES[key]}
            value={String(draft.plan[key])}
            choices={stages}
            onChange={(value) => change({ plan: { ...draft.plan, [key]: Number(value) } })}
          />
        ))}
      </fieldset>
      <fieldset className="own-fields own-narrow">
        <legend>Power, rpm (empty: what the model needs)</legend>
        {keys<RpmName>(RPM_NAMES).map((key) => (
          <TextField
            key={key}
            label={RPM_NAMES[key]}
            value={draft.rpm[key]}
            wrong={wrongs.rpm[key]}
            onChange={(value) => change({ rpm: { ...draft.rpm, [key]: value } })}
          />
        ))}
      </fieldset>
      <p className="wrong" role="alert">
        {wrong}
      </p>
      <div className="own-buttons">
        <button type="submit" className="strong">
          keep the card and brief
        </button>
        <button type="button" onClick={keep}>
          keep the card
        </button>
        {editing === '' ? null : (
          <button
            type="button"
            onClick={() => {
              forgetCard(editing);
              onSaid(`The card of ${draft.title} is forgotten.`);
              open('');
            }}
          >
            forget the card
          </button>
        )}
      </div>
    </form>
  );
};
