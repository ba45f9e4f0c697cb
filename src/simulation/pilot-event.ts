import * as v from 'valibot';

/**
 * What a pilot does beside moving the controls, at a step: an item ticked, a call made, a look taken, the subscale
 * turned. Plain data of the recording like the controls, so that a flight is assessed again as it was.
 */
const PILOT_EVENT_KINDS = [
  'tick',
  'say',
  'look',
  'subscale',
  'coach',
  'said',
  'warned',
  'traffic',
  'flies',
] as const;

/**
 * `tick`: id of an item of a check. `say`: a call and which of its wordings. `look`: degrees right of the nose, or
 * `leg` for the look that follows the leg by itself. `subscale`: hectopascals. `coach`: how loud. `said`: the
 * coach's words; `warned`: those of its safety layer. `traffic`: where another aeroplane is. `flies`: who has the
 * controls from here on, `model` or `pilot`.
 */
export const pilotEventSchema = v.strictObject({
  /** The step that begins when it is done. */
  step: v.pipe(v.number(), v.integer(), v.minValue(0)),
  kind: v.picklist(PILOT_EVENT_KINDS),
  value: v.pipe(v.string(), v.maxLength(400)),
});

export type PilotEvent = Readonly<v.InferOutput<typeof pilotEventSchema>>;

/** Shared by every step in which nothing is said. */
export const NO_EVENTS: readonly PilotEvent[] = Object.freeze([]);
