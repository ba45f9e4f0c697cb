import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { SpeedsCard } from '../../formats/own-file.ts';
import { nameField, numberField, optionalNumber, ownId, type Reader, wrongIn } from './fields.ts';

/** Speeds on a card, in the order they are flown, with the words an instructor uses. */
export const SPEED_NAMES = {
  rotateKt: 'rotate',
  climbKt: 'climb, best rate',
  bestAngleKt: 'best angle',
  downwindKt: 'downwind',
  baseKt: 'base',
  finalKt: 'final',
  finalFullFlapKt: 'final, full flap',
  shortFieldKt: 'short field',
  flaplessKt: 'flapless',
  glideKt: 'glide',
  goAroundKt: 'going around',
} as const;
export type SpeedName = keyof typeof SPEED_NAMES;

export const STAGE_NAMES = {
  takeOffStage: 'take-off',
  downwindStage: 'downwind',
  baseStage: 'base',
  finalStage: 'final',
  landingStage: 'landing',
} as const;
export type StageName = keyof typeof STAGE_NAMES;

export const RPM_NAMES = { downwind: 'downwind', base: 'base', final: 'final' } as const;
export type RpmName = keyof typeof RPM_NAMES;

/** What is typed on a card: text, as it stands in the fields. */
export interface CardDraft {
  readonly title: string;
  readonly flownBy: string;
  readonly speeds: Readonly<Record<SpeedName, string>>;
  readonly plan: Readonly<Record<StageName, number>>;
  readonly rpm: Readonly<Record<RpmName, string>>;
  readonly crosswind: string;
  readonly tailwind: string;
}

const mapped = <K extends string, T>(names: Readonly<Record<K, string>>, make: (key: K) => T): Record<K, T> =>
  Object.fromEntries((Object.keys(names) as K[]).map((key) => [key, make(key)])) as Record<K, T>;

export const SPEED_READERS: Readonly<Record<SpeedName, Reader<number>>> = mapped(SPEED_NAMES, (key) =>
  numberField(`speed ${SPEED_NAMES[key]}, kt,`, 30, 150),
);
export const RPM_READERS: Readonly<Record<RpmName, Reader<number | null>>> = mapped(RPM_NAMES, (key) =>
  optionalNumber(`rpm on ${RPM_NAMES[key]}`, 500, 4000),
);
export const CARD_READERS = {
  title: nameField('name'),
  crosswind: numberField('crosswind limit, kt,', 1, 60),
  tailwind: numberField('tailwind limit, kt,', 0, 30),
} as const;

/** A card with the model's own figures, to be changed. */
export const cardOfModel = (model: Aeroplane): CardDraft => ({
  title: '',
  flownBy: model.id,
  speeds: mapped(SPEED_NAMES, (key) => String(model.speeds[key])),
  plan: mapped(STAGE_NAMES, (key) => model.plan[key]),
  rpm: { downwind: '', base: '', final: '' },
  crosswind: String(model.limits.crosswindKt),
  tailwind: String(model.limits.tailwindKt),
});

/** The form of a card that was entered before. */
export const draftOfCard = (card: SpeedsCard): CardDraft => ({
  title: card.title,
  flownBy: card.flownBy,
  speeds: mapped(SPEED_NAMES, (key) => String(card.speeds[key])),
  plan: card.plan,
  rpm: mapped(RPM_NAMES, (key) => (card.rpm[key] === null ? '' : String(card.rpm[key]))),
  crosswind: String(card.limits.crosswindKt),
  tailwind: String(card.limits.tailwindKt),
});

/** The card that the form describes. Throws an Error sentence at the first field that cannot be used. */
export const cardOfDraft = (draft: CardDraft): SpeedsCard => {
  const title = CARD_READERS.title(draft.title);
  return {
    id: ownId(title),
    title,
    flownBy: draft.flownBy,
    speeds: mapped(SPEED_NAMES, (key) => SPEED_READERS[key](draft.speeds[key])),
    plan: draft.plan,
    rpm: mapped(RPM_NAMES, (key) => RPM_READERS[key](draft.rpm[key])),
    limits: {
      crosswindKt: CARD_READERS.crosswind(draft.crosswind),
      tailwindKt: CARD_READERS.tailwind(draft.tailwind),
    },
  };
};

/** Sentences by field. */
export const cardWrongs = (draft: CardDraft) => ({
  card: wrongIn(draft, CARD_READERS),
  speeds: wrongIn(draft.speeds, SPEED_READERS),
  rpm: wrongIn(draft.rpm, RPM_READERS),
});
