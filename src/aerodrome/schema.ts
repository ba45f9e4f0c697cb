import * as v from 'valibot';

/**
 * The file of one aerodrome. Directions are degrees magnetic, as painted and spoken; `variationDegE` turns
 * them true. A runway strip has two ends; every landing direction is one `end`.
 */
const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const notNegative = v.pipe(finite, v.minValue(0));
const text = v.pipe(v.string(), v.minLength(1));

const slopeLightsSchema = v.strictObject({
  /** PAPI has four units, APAPI two. */
  kind: v.picklist(['PAPI', 'APAPI']),
  angleDeg: v.pipe(finite, v.minValue(1.5), v.maxValue(10)),
  side: v.picklist(['left', 'right']),
  /** Of the light units beyond the landing threshold. */
  pastThresholdM: positive,
  rangeNmi: positive,
  /** Half width of the lateral sector. */
  sectorDeg: v.pipe(finite, v.gtValue(0), v.maxValue(90)),
});

const runwayEndSchema = v.strictObject({
  /** As painted, for instance "22". */
  designator: v.pipe(v.string(), v.regex(/^(0[1-9]|[12][0-9]|3[0-6])[LRC]?$/)),
  headingDegM: v.pipe(finite, v.gtValue(0), v.maxValue(360)),
  /** Beyond the start of the surface; landings use what lies after it. */
  displacedThresholdM: notNegative,
  /** Clear ground beyond the far end over which the first of the climb may be flown; none where left out. */
  clearwayM: v.optional(notNegative),
  circuitSide: v.picklist(['left', 'right']),
  slopeLights: v.nullable(slopeLightsSchema),
  /** Of the aim point beyond the landing threshold; the specified touchdown point lies further on. */
  aimPastThresholdM: positive,
  specifiedPastAimM: notNegative,
});

export const aerodromeSchema = v.strictObject({
  id: text,
  title: text,
  description: text,
  /** Of the first end's landing threshold. */
  elevationFt: v.pipe(finite, v.minValue(-1300), v.maxValue(15000)),
  variationDegE: v.pipe(finite, v.minValue(-90), v.maxValue(90)),
  circuitHeightFt: positive,
  runway: v.strictObject({
    lengthM: positive,
    widthM: positive,
    surface: v.picklist(['tarmac', 'grass']),
    /** Up along the first end's landing direction, percent. */
    slopePercent: v.pipe(finite, v.minValue(-5), v.maxValue(5)),
    ends: v.tuple([runwayEndSchema, runwayEndSchema]),
  }),
  terrain: v.picklist(['open', 'roughly-open', 'rough']),
  /** How the circuit is flown here; a preset of the circuit plan. */
  circuit: v.strictObject({
    /** Downwind track to the runway centreline. */
    spacingNmi: positive,
    descentFrom: v.picklist(['abeam', 'base-turn']),
    /** Approach angle the circuit aims for. */
    approachDeg: v.pipe(finite, v.minValue(2), v.maxValue(10)),
    crosswindTurnFt: positive,
    /** Height at which the final turn is to be complete; left out where the custom knows none. */
    finalTurnDoneFt: v.optional(positive),
    /** Completed final turn to the aim point; left out where the 45-degree base turn decides. */
    finalFromAimNmi: v.optional(positive),
    /** Level of help words: power for sink and pitch for speed, or the other way round. */
    teaching: v.picklist(['power-for-sink', 'point-with-pitch']),
    source: text,
  }),
  /** For the plan and the window only; metres east and north of the first end's landing threshold, true. */
  features: v.array(
    v.strictObject({
      kind: v.picklist(['field', 'wood', 'water', 'village', 'road', 'obstacle']),
      name: v.string(),
      points: v.pipe(v.array(v.tuple([finite, finite])), v.minLength(1)),
      heightFt: v.optional(notNegative),
    }),
  ),
  sources: v.record(v.string(), text),
});

export type Aerodrome = v.InferOutput<typeof aerodromeSchema>;
export type RunwayEnd = v.InferOutput<typeof runwayEndSchema>;
export type SlopeLights = v.InferOutput<typeof slopeLightsSchema>;
