import * as v from 'valibot';
import { parseAerodrome } from '../aerodrome/parse.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import { parseAeroplane } from '../aeroplane/parse.ts';
import { type Aeroplane, speedsSchema } from '../aeroplane/schema.ts';
import { describeIssue } from '../units/issues.ts';

/**
 * One's own places and cards as one file: a runway as its aerodrome, and a card with the speeds, flap plan and
 * powers of one's own aeroplane. The built-in model flies; the card says what is briefed and assessed. The same
 * file is what `--aerodrome` and `--aeroplane` of the command line take.
 */
export const OWN_FILE_KIND = 'lapwing-own';
const OWN_FILE_VERSION = 1;

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const stage = v.pipe(v.number(), v.integer(), v.minValue(0));
const rpm = v.nullable(v.pipe(finite, v.minValue(500), v.maxValue(4000)));

const speedsCardSchema = v.strictObject({
  id: v.pipe(v.string(), v.minLength(1)),
  title: v.pipe(v.string(), v.minLength(1), v.maxLength(40)),
  /** The built-in aeroplane that flies it. */
  flownBy: v.pipe(v.string(), v.minLength(1)),
  speeds: speedsSchema,
  /** Flap stage of the model on each leg. */
  plan: v.strictObject({
    takeOffStage: stage,
    downwindStage: stage,
    baseStage: stage,
    finalStage: stage,
    landingStage: stage,
  }),
  /** What the card says of power; null: as the model needs it. */
  rpm: v.strictObject({ downwind: rpm, base: rpm, final: rpm }),
  limits: v.strictObject({ crosswindKt: positive, tailwindKt: v.pipe(finite, v.minValue(0)) }),
});
export type SpeedsCard = v.InferOutput<typeof speedsCardSchema>;

const ownFileSchema = v.strictObject({
  kind: v.literal(OWN_FILE_KIND),
  version: v.literal(OWN_FILE_VERSION),
  aerodromes: v.array(v.unknown()),
  cards: v.array(v.unknown()),
});

export interface OwnFile {
  readonly aerodromes: readonly Aerodrome[];
  readonly cards: readonly SpeedsCard[];
}

/** A well-formed card; an Error sentence with the place, what was found and what was expected. */
function parseSpeedsCard(json: unknown, file: string): SpeedsCard {
  const result = v.safeParse(speedsCardSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  return result.output;
}

/**
 * Reads the file back, every part checked. Throws an Error sentence that names the part:
 * `mine.json, aerodromes[0]: runway.widthM must be above 0, was -14`.
 */
export function parseOwnFile(json: unknown, file: string): OwnFile {
  const result = v.safeParse(ownFileSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  return {
    aerodromes: result.output.aerodromes.map((each, i) => parseAerodrome(each, `${file}, aerodromes[${i}]`)),
    cards: result.output.cards.map((each, i) => parseSpeedsCard(each, `${file}, cards[${i}]`)),
  };
}

/** Whether a parsed JSON says that it is such a file. */
export const isOwnFile = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && (json as { kind?: unknown }).kind === OWN_FILE_KIND;

/** As text, to be saved. */
export const ownFileText = (own: OwnFile): string =>
  `${JSON.stringify({ kind: OWN_FILE_KIND, version: OWN_FILE_VERSION, ...own }, null, 2)}\n`;

/**
 * The built-in aeroplane with the card's figures in place of its own. Throws an Error sentence where the card is
 * at odds with the model: a speed above the limit of the flap planned there, a stage it does not have.
 */
export function aeroplaneOfCard(card: SpeedsCard, model: Aeroplane): Aeroplane {
  return parseAeroplane(
    {
      ...model,
      id: card.id,
      title: card.title,
      description: `Card entered by you; the ${model.title} flies it.`,
      speeds: card.speeds,
      plan: {
        ...model.plan,
        ...card.plan,
        baseRpm: card.rpm.base ?? model.plan.baseRpm,
        cardRpm: Object.fromEntries(Object.entries(card.rpm).filter(([, rpm]) => rpm !== null)),
      },
      limits: { ...model.limits, ...card.limits },
      claims: {},
      sources: { ...model.sources, card: 'speeds, flap plan, powers and wind limits entered by you' },
    },
    card.title,
  );
}
