import * as v from 'valibot';

/**
 * What surrounds the flying: who answers the calls and in which words, what the altimeter was left at, and who
 * else flies the circuit. Plain data of the scenario; a flight without it is flown in silence and alone.
 */
const RADIOS = ['untowered', 'towered'] as const;
/** Whose words the calls use: CAP 413 and ICAO, or the FAA's AIM. */
const CALL_WORDS = ['icao', 'faa'] as const;
export type CallWords = (typeof CALL_WORDS)[number];

const finite = v.pipe(v.number(), v.finite());

const trafficSchema = v.strictObject({
  /** The leg it begins at the start of, when the flight begins. */
  from: v.picklist(['upwind', 'crosswind', 'downwind', 'base', 'final']),
  /** From its stop on the runway until it has left it. */
  vacatesS: v.pipe(finite, v.minValue(0), v.maxValue(600)),
});
export type Traffic = v.InferOutput<typeof trafficSchema>;

export const proceduresSchema = v.strictObject({
  radio: v.picklist(RADIOS),
  words: v.picklist(CALL_WORDS),
  /** Of the altimeter, when the flight begins. */
  subscaleHpa: v.pipe(finite, v.minValue(850), v.maxValue(1090)),
  traffic: v.pipe(v.array(trafficSchema), v.maxLength(3)),
});
export type Procedures = v.InferOutput<typeof proceduresSchema>;
