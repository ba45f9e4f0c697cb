import * as v from 'valibot';
import { failureSchema as scenarioFailureSchema } from '../../simulation/scenario.ts';
import { TECHNIQUES } from '../../simulation/task.ts';
import { describeIssue } from '../../units/issues.ts';
import { OUTCOMES } from '../judge/report.ts';
import { ALL_RULES } from '../judge/rules.ts';
import { selects } from '../judge/selection.ts';
import { LEG_NAMES } from '../names.ts';
import { bandSchema } from './draw.ts';

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const text = v.pipe(v.string(), v.minLength(1));
const sentences = v.pipe(v.array(text), v.minLength(1));

/** Where it begins: at the line-up, on a leg and so far from what the plan has there, or in the round-out. */
const startSchema = v.variant('at', [
  v.strictObject({ at: v.literal('line-up') }),
  v.strictObject({
    at: v.picklist(['upwind', 'crosswind', 'downwind', 'base', 'final']),
    /** Further along the leg than where it begins; beyond its end it goes straight on. */
    alongM: v.exactOptional(bandSchema),
    /** Past the end of the leg, straight on, instead. */
    beyondM: v.exactOptional(bandSchema),
    /** Still at circuit height, whatever the plan has there. */
    level: v.exactOptional(v.boolean()),
    /** Further from the runway (on final: towards the circuit side of the centreline). */
    outM: v.exactOptional(bandSchema),
    aboveFt: v.exactOptional(bandSchema),
    fasterKt: v.exactOptional(bandSchema),
    flap: v.exactOptional(v.picklist(['up', 'as-planned', 'landing'])),
  }),
  v.strictObject({
    /** The top of a balloon: level over the runway, landing flap, so many times the stalling speed. */
    at: v.literal('balloon'),
    pastAimM: bandSchema,
    heightFt: bandSchema,
    overStall: bandSchema,
  }),
]);

/** What is not asked for stays calm and standard. Directions from the landing direction, + from the right. */
const weatherSchema = v.strictObject({
  windKt: v.exactOptional(bandSchema),
  windFromRunwayDeg: v.exactOptional(bandSchema),
  /** A coin decides from which side. */
  eitherSide: v.exactOptional(v.boolean()),
  gustAddsKt: v.exactOptional(bandSchema),
  turbulence: v.exactOptional(v.picklist(['none', 'light', 'moderate'])),
  aboveStandardC: v.exactOptional(bandSchema),
  drift: v.exactOptional(v.strictObject({ turnsDeg: bandSchema, addsKt: bandSchema, overS: bandSchema })),
});

/** Something said on the way; the figure is that of the instruction of the same name. */
const instructionSchema = v.variant('what', [
  v.strictObject({ what: v.literal('stop'), atIasKt: bandSchema }),
  v.strictObject({ what: v.literal('go-around'), atHeightFt: bandSchema }),
  v.strictObject({ what: v.literal('extend'), byM: bandSchema }),
  v.strictObject({ what: v.literal('number-two'), byM: bandSchema }),
  v.strictObject({ what: v.literal('orbit'), atAlongM: bandSchema }),
]);

const failureSchema = v.strictObject({
  what: scenarioFailureSchema.entries.what,
  atS: v.exactOptional(bandSchema),
  aboveFt: v.exactOptional(bandSchema),
  /** Of power, the share that is left. */
  amount: v.exactOptional(bandSchema),
});

/** The file of one exercise: what is to be flown, under what, and what is looked at. */
const exerciseSchema = v.strictObject({
  id: text,
  title: text,
  aim: text,
  /** What it trains, a few words each. */
  trains: sentences,
  /** Touch-and-goes before the full stop, plus one. */
  circuits: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(50)),
  /** Where it is flown when nothing else is chosen. */
  aerodrome: v.exactOptional(text),
  start: startSchema,
  /** Once this leg is over there is nothing more to practise, though the flight may go on. */
  doneAfter: v.exactOptional(v.picklist(LEG_NAMES)),
  weather: v.exactOptional(weatherSchema),
  /** The circuit, where it is not the aerodrome's custom. */
  circuit: v.exactOptional(
    v.strictObject({
      spacingNmi: v.exactOptional(positive),
      approachDeg: v.exactOptional(v.pipe(finite, v.minValue(2), v.maxValue(10))),
      descentFrom: v.exactOptional(v.picklist(['abeam', 'base-turn'])),
      finalFromAimNmi: v.exactOptional(positive),
    }),
  ),
  /** The flap and the approach speed, where they are not the aeroplane's normal ones. */
  flap: v.exactOptional(v.picklist(['up', 'full'])),
  approachSpeed: v.exactOptional(v.picklist(['flapless', 'short-field', 'glide'])),
  technique: v.exactOptional(v.picklist(TECHNIQUES)),
  /** One of them is said, as the seed has it. */
  oneOf: v.exactOptional(v.pipe(v.array(instructionSchema), v.minLength(1))),
  failures: v.exactOptional(v.array(failureSchema)),
  /** Rows of the table of rules; a name that ends in `*` stands for all that begin so. */
  assessed: sentences,
  /** In words, for the pilot. */
  notAssessed: text,
  /** How a flight may end to be one that succeeded. */
  success: v.pipe(v.array(v.picklist(OUTCOMES)), v.minLength(1)),
  sayFirst: sentences,
  cautions: sentences,
  sources: v.record(v.string(), text),
});

export type Exercise = v.InferOutput<typeof exerciseSchema>;

/** Throws an Error whose message is one sentence with place, expected and found. */
export const parseExercise = (json: unknown, file: string): Exercise => {
  const result = v.safeParse(exerciseSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  const exercise = result.output;
  exercise.assessed.forEach((name, i) => {
    if (!ALL_RULES.some((rule) => selects([name], rule.id)))
      throw new Error(`${file}: assessed[${i}] must name a row of the rules, was "${name}"`);
  });
  if (Object.keys(exercise.sources).length === 0)
    throw new Error(`${file}: sources must name at least one source, was an object without keys`);
  return exercise;
};
