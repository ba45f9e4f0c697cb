import * as v from 'valibot';
import { COACH_WORDS, type HelpUsed, PICTURES } from '../lesson/attempt.ts';
import { describeIssue } from '../units/issues.ts';
import type { AttemptBody, AttemptHead } from './attempt.ts';
import { base64FromBytes, bytesFromBase64 } from './base64.ts';
import { parseJson } from './json-text.ts';
import { parseRecording, recordingJson } from './recording-json.ts';
import { resultSchema } from './report-schema.ts';

/** Rises when the shape of the file changes; files of every earlier version stay readable. */
const LOGBOOK_VERSION = 1;
const FORMAT = 'lapwing-logbook';

/**
 * The logbook's file: `{ format, version, attempts: [...] }`. An attempt is its head, and its body either spread
 * out (`marks`, `result`, `recording`) or `packed`: the same three as JSON, gzipped (RFC 1952), in base64.
 */
export interface WrittenAttempt {
  readonly head: AttemptHead;
  readonly body: AttemptBody | null;
  /** Gzipped text of the body; given when `body` is not. */
  readonly packed: Uint8Array | null;
}

export const bodyText = (body: AttemptBody): string => JSON.stringify(bodyJson(body));

const bodyJson = (body: AttemptBody) => ({
  marks: body.marks.map((m) => ({ at_s: m.atS, kind: m.kind, text: m.text })),
  result: body.result,
  ...(body.judgedBy !== null && { judged_by: body.judgedBy }),
  recording: recordingJson(body.recording),
});

const headJson = (head: AttemptHead) => ({
  id: head.id,
  pilot: head.pilot,
  when: head.when,
  notes: head.notes,
  own_view: head.ownView,
  parent: head.parent === null ? null : { id: head.parent.id, at_s: head.parent.atS },
  help: {
    coach: head.help.coach,
    picture: head.help.picture,
    rudder_assist: head.help.rudderAssist,
    hand_holds: head.help.handHolds,
    freezes: head.help.freezes,
    steps_back: head.help.stepsBack,
    plan_looks: head.help.planLooks,
    watched_s: head.help.watchedS,
  },
});

/** What stands before the first attempt, between two, and after the last: a long file is written piece by piece. */
export const LOGBOOK_TEXT = {
  before: `{"format":"${FORMAT}","version":${LOGBOOK_VERSION},"attempts":[\n`,
  between: ',\n',
  after: '\n]}\n',
} as const;

/** One attempt, spread out for whoever wants to read it. */
export const attemptText = (head: AttemptHead, body: AttemptBody): string =>
  JSON.stringify({ ...headJson(head), ...bodyJson(body) });

/** One attempt, small. */
export const packedAttemptText = (head: AttemptHead, packed: Uint8Array): string =>
  JSON.stringify({ ...headJson(head), packed: base64FromBytes(packed) });

/** The longest that texts typed by people may be. */
export const LONGEST = { name: 80, notes: 20000, view: 400, mark: 400 } as const;

const finite = v.pipe(v.number(), v.finite());
const notNegative = v.pipe(finite, v.minValue(0));
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const id = v.pipe(v.string(), v.regex(/^[A-Za-z0-9-]{1,64}$/));
const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));
const WHEN = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d\.\d{3}Z$/;

const headSchema = v.looseObject({
  id,
  pilot: v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST.name)),
  when: v.pipe(v.string(), v.regex(WHEN)),
  notes: text(LONGEST.notes),
  own_view: v.pipe(v.array(text(LONGEST.view)), v.maxLength(20)),
  parent: v.nullable(v.object({ id, at_s: v.pipe(finite, v.minValue(0)) })),
  help: v.object({
    coach: v.picklist(COACH_WORDS),
    picture: v.picklist(PICTURES),
    rudder_assist: v.boolean(),
    hand_holds: v.boolean(),
    freezes: count,
    steps_back: count,
    plan_looks: count,
    watched_s: v.pipe(finite, v.minValue(0)),
  }),
});

const bodySchema = v.looseObject({
  marks: v.pipe(
    v.array(
      v.object({
        at_s: v.pipe(finite, v.minValue(0)),
        kind: v.picklist(['check', 'call', 'look', 'coach', 'note']),
        text: text(LONGEST.mark),
      }),
    ),
    v.maxLength(20000),
  ),
  result: resultSchema,
  judged_by: v.optional(
    v.object({
      set: text(LONGEST.name),
      changed: v.record(text(LONGEST.name), v.object({ below: notNegative, above: notNegative })),
    }),
  ),
  recording: v.unknown(),
});

const fileSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.literal(LOGBOOK_VERSION),
  attempts: v.pipe(v.array(v.looseObject({})), v.minLength(1), v.maxLength(20000)),
});

const checked = <S extends v.GenericSchema>(schema: S, json: unknown, place: string): v.InferOutput<S> => {
  const result = v.safeParse(schema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(place, result.issues[0]));
  return result.output;
};

const helpFrom = (h: v.InferOutput<typeof headSchema>['help']): HelpUsed => ({
  coach: h.coach,
  picture: h.picture,
  rudderAssist: h.rudder_assist,
  handHolds: h.hand_holds,
  freezes: h.freezes,
  stepsBack: h.steps_back,
  planLooks: h.plan_looks,
  watchedS: h.watched_s,
});

const headFrom = (json: unknown, place: string): AttemptHead => {
  const h = checked(headSchema, json, place);
  return {
    id: h.id,
    pilot: h.pilot,
    when: h.when,
    help: helpFrom(h.help),
    notes: h.notes,
    ownView: h.own_view,
    parent: h.parent === null ? null : { id: h.parent.id, atS: h.parent.at_s },
  };
};

/** Reads a body as a value; throws an Error sentence with place, expected and found. */
const parseBody = (json: unknown, place: string): AttemptBody => {
  const b = checked(bodySchema, json, place);
  return {
    marks: b.marks.map((m) => ({ atS: m.at_s, kind: m.kind, text: m.text })),
    result: b.result,
    judgedBy: b.judged_by ?? null,
    recording: parseRecording(b.recording, `${place}.recording`),
  };
};

/** Reads an unpacked body's text. */
export const parseBodyText = (text: string, place: string): AttemptBody =>
  parseBody(parseJson(text, place), place);

/** Reads the logbook's file. Bodies that are packed stay packed. Throws an Error sentence at the first fault. */
export const parseLogbook = (json: unknown, file: string): WrittenAttempt[] => {
  const { attempts } = checked(fileSchema, json, file);
  const seen = new Set<string>();
  return attempts.map((attempt, i) => {
    const place = `${file}: attempts[${i}]`;
    const head = headFrom(attempt, place);
    if (seen.has(head.id)) throw new Error(`${place}.id must be another than before, was "${head.id}" again`);
    seen.add(head.id);
    if (typeof attempt.packed === 'string') {
      return { head, body: null, packed: bytesFromBase64(attempt.packed, `${place}.packed`) };
    }
    return { head, body: parseBody(attempt, place), packed: null };
  });
};

/** A file that holds a logbook, not a single recording. */
export const isLogbook = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && (json as { format?: unknown }).format === FORMAT;
