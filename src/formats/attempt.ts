import type { AttemptRow, HelpUsed, Parent } from '../lesson/attempts/attempt.ts';
import type { JudgedBy } from '../lesson/judge/edit-tolerances.ts';
import { firstThing } from '../lesson/judge/first/first-thing.ts';
import { flownBy } from '../session/flown-by.ts';
import type { Recording } from '../session/recording.ts';
import type { FlownResult } from './result.ts';
import { windText } from './wind-text.ts';

/** Something said, ticked or looked at in flight. */
export interface Mark {
  readonly atS: number;
  readonly kind: 'check' | 'call' | 'look' | 'coach' | 'note';
  readonly text: string;
}

/** What cannot be edited afterwards: the flight, its marks and its result. */
export interface AttemptBody {
  readonly recording: Recording;
  readonly marks: readonly Mark[];
  readonly result: FlownResult;
  /** Null: written down before it was; the usual set. */
  readonly judgedBy: JudgedBy | null;
}

/** Who, when and how: what stands beside the flight. */
export interface AttemptHead {
  readonly id: string;
  readonly pilot: string;
  /** `2026-01-31T09:30:00.000Z`. */
  readonly when: string;
  readonly help: HelpUsed;
  readonly notes: string;
  readonly ownView: readonly string[];
  readonly parent: Parent | null;
}

/** One flight kept whole: it can be flown again to the bit. */
export interface Attempt extends AttemptHead, AttemptBody {}

/** The row that lists and trends work on. */
export const rowOf = (head: AttemptHead, body: AttemptBody, sizeBytes: number): AttemptRow => {
  const { scenario, modelVersion } = body.recording;
  const { result } = body;
  const { last, theirsFromS } = flownBy(body.recording);
  return {
    id: head.id,
    pilot: head.pilot,
    when: head.when,
    exercise: scenario.exercise,
    from: scenario.start.leg,
    aeroplane: scenario.aeroplane.title,
    aerodrome: scenario.aerodrome.title,
    runway: scenario.runway,
    wind: windText(scenario.weather),
    turbulence: scenario.weather.turbulence,
    outcome: result.outcome,
    why: result.why,
    first: firstThing(result)?.sentence ?? '',
    flightS: result.flight_s,
    items: result.items.map(({ id, circuit, leg, value, unit, target, low, high, band }) => ({
      id,
      circuit,
      leg,
      value,
      unit,
      target,
      low,
      high,
      band,
    })),
    safety: result.safety.map(({ what }) => what),
    missedGoArounds: result.go_arounds.filter((g) => g.at_s === null).map(({ why }) => why),
    help: head.help,
    notes: head.notes,
    ownView: head.ownView,
    parent: head.parent,
    demonstration: last === 'model',
    theirsFromS: theirsFromS ?? 0,
    modelVersion,
    sizeBytes,
    deletedAt: null,
  };
};

/** What of a row is the head of its attempt. */
export const headOf = (row: AttemptRow): AttemptHead => ({
  id: row.id,
  pilot: row.pilot,
  when: row.when,
  help: row.help,
  notes: row.notes,
  ownView: row.ownView,
  parent: row.parent,
});
