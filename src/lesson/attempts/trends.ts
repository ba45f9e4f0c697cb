import { type Band, isAskedEnd, type Outcome } from '../judge/report.ts';
import { LEG_NAMES, type LegName } from '../names.ts';
import { type AttemptRow, type ItemNumber, isUnaided } from './attempt.ts';
import { type Tendency, tendencyOf } from './tendency.ts';

/** "Three in a row": once is luck (common practice). */
export const IN_A_ROW = 3;
/** What "lately" means, in attempts. */
export const LATELY = 5; // our choice: about one lesson

/** One value of an item in one circuit of one attempt. */
export interface TrendPoint {
  readonly attempt: string;
  readonly when: string;
  readonly circuit: number;
  readonly value: number | null;
  readonly band: Band;
  readonly unaided: boolean;
}

export interface BandCounts {
  readonly green: number;
  readonly amber: number;
  readonly red: number;
}

/** How one item went over attempts. */
export interface ItemTrend {
  readonly id: string;
  readonly leg: LegName;
  readonly unit: string;
  /** Oldest first. */
  readonly points: readonly TrendPoint[];
  readonly counts: BandCounts;
  /** Of the last five judged. */
  readonly lately: BandCounts;
  /** Greens in a row up to now, and the most there ever were. */
  readonly run: number;
  readonly best: number;
  readonly tendency: Tendency;
  /** Where it lay, when lately it fell short: mostly above its tolerance, mostly below, or both alike. */
  readonly side: 'above' | 'below' | null;
  /** Sample standard deviation of the last five values; null below three. */
  readonly spread: number | null;
}

/** How the items of one leg went. */
export interface LegTrend {
  readonly leg: LegName;
  readonly counts: BandCounts;
  readonly lately: BandCounts;
}

const oldestFirst = (a: AttemptRow, b: AttemptRow): number =>
  a.when === b.when ? (a.id < b.id ? -1 : 1) : a.when < b.when ? -1 : 1;

const isOwn = ({ outcome, demonstration, help, flightS }: AttemptRow): boolean =>
  outcome !== 'refused' && demonstration !== true && help.watchedS < flightS / 2;

/** Attempts that say something about their pilot, oldest first: flown, no demonstration, not mostly by the model pilot. */
export const ownAttempts = (rows: readonly AttemptRow[]): AttemptRow[] =>
  rows.filter(isOwn).sort(oldestFirst);

const countsOf = (bands: readonly Band[]): BandCounts => {
  const of = (wanted: Band): number => bands.filter((band) => band === wanted).length;
  return { green: of('green'), amber: of('amber'), red: of('red') };
};

/** How many times the last stood in a row, and the longest row. */
const runsOf = (good: readonly boolean[]): { readonly run: number; readonly best: number } => {
  let run = 0;
  let best = 0;
  for (const one of good) {
    run = one ? run + 1 : 0;
    best = Math.max(best, run);
  }
  return { run, best };
};

/** Distance from the target, in widths of the tolerance where it has one. */
const offBy = (item: ItemNumber): number => {
  if (item.value === null) return 0;
  const target = item.target ?? 0;
  const above = item.high === null ? 0 : item.high - target;
  const below = item.low === null ? 0 : target - item.low;
  const width = item.value >= target ? above || below : below || above;
  return Math.abs(item.value - target) / (width > 0 ? width : 1);
};

const sideOf = (items: readonly ItemNumber[]): 'above' | 'below' | null => {
  let above = 0;
  let below = 0;
  for (const { band, value, low, high } of items) {
    if (value === null || band === 'green') continue;
    if (high !== null && value > high) above += 1;
    else if (low !== null && value < low) below += 1;
  }
  if (above === below) return null;
  return above > below ? 'above' : 'below';
};

const spreadOf = (values: readonly number[]): number | null => {
  if (values.length < 3) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return Math.sqrt(squares / (values.length - 1));
};

interface Seen {
  readonly point: TrendPoint;
  readonly item: ItemNumber;
}

const trendOf = (id: string, seen: readonly Seen[]): ItemTrend => {
  const judged = seen.filter(({ point }) => point.band !== 'not-judged').map(({ item }) => item);
  const last = judged.slice(-LATELY);
  const bands = judged.map((item) => item.band);
  const newest = seen[seen.length - 1] as Seen;
  return {
    id,
    leg: newest.item.leg,
    unit: newest.item.unit,
    points: seen.map(({ point }) => point),
    counts: countsOf(bands),
    lately: countsOf(last.map((item) => item.band)),
    ...runsOf(bands.map((band) => band === 'green')),
    tendency: tendencyOf(judged.map(offBy)),
    side: sideOf(last),
    spread: spreadOf(last.flatMap(({ value }) => (value === null ? [] : [value]))),
  };
};

/** Every item over the attempts, in the order of the circuit. */
export const itemTrends = (rows: readonly AttemptRow[]): ItemTrend[] => {
  const byId = new Map<string, Seen[]>();
  for (const row of ownAttempts(rows)) {
    for (const item of row.items) {
      const { id, circuit, value, band } = item;
      const point = { attempt: row.id, when: row.when, circuit, value, band, unaided: isUnaided(row.help) };
      byId.set(id, [...(byId.get(id) ?? []), { point, item }]);
    }
  }
  return [...byId]
    .map(([id, seen]) => trendOf(id, seen))
    .sort((a, b) => LEG_NAMES.indexOf(a.leg) - LEG_NAMES.indexOf(b.leg));
};

/** Every leg over the attempts, in the order of the circuit; legs where nothing was judged are left out. */
export const legTrends = (rows: readonly AttemptRow[]): LegTrend[] => {
  const own = ownAttempts(rows);
  const bandsOn = (leg: LegName, from: readonly AttemptRow[]): Band[] =>
    from.flatMap((row) => row.items.filter((item) => item.leg === leg).map((item) => item.band));
  return LEG_NAMES.map((leg) => ({
    leg,
    counts: countsOf(bandsOn(leg, own)),
    lately: countsOf(bandsOn(leg, own.slice(-LATELY))),
  })).filter(({ counts }) => counts.green + counts.amber + counts.red > 0);
};

/** How a flight of an exercise may end: landing out is no failure where the engine has stopped. */
export type SuccessOf = (exercise: string) => readonly Outcome[];

const A_LANDING: SuccessOf = () => ['stopped'];

/** Whether it ended as its exercise asks for, or was flown as far as the exercise goes. */
export const endedAsAsked = (
  { outcome, exercise }: Pick<AttemptRow, 'outcome' | 'exercise'>,
  successOf: SuccessOf = A_LANDING,
): boolean => isAskedEnd(outcome, successOf(exercise));

/** A pilot's own flight that nobody would have to speak about: ended as asked, nothing unsafe, nothing red. */
export const isSound = (row: AttemptRow, successOf: SuccessOf = A_LANDING): boolean =>
  row.demonstration !== true &&
  endedAsAsked(row, successOf) &&
  row.safety.length === 0 &&
  row.missedGoArounds.length === 0 &&
  row.items.every((item) => item.band !== 'red');

/** Sound flights in a row. */
export interface Consistency {
  readonly run: number;
  readonly best: number;
  /** The same, counting only flights without help. */
  readonly unaidedRun: number;
  /** Three in a row, now. */
  readonly reached: boolean;
}

export const consistencyOf = (rows: readonly AttemptRow[], successOf: SuccessOf = A_LANDING): Consistency => {
  const own = ownAttempts(rows);
  const sound = own.map((row) => isSound(row, successOf));
  const { run, best } = runsOf(sound);
  const unaided = runsOf(own.map((row, i) => sound[i] === true && isUnaided(row.help)));
  return { run, best, unaidedRun: unaided.run, reached: run >= IN_A_ROW };
};
