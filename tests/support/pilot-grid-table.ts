import type { GridFlight } from './pilot-grid.ts';

/** The value below which so much of a list lies. */
export const share = (values: readonly number[], part: number): number => {
  const sorted = values.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
};

const spread = (values: readonly number[], parts: readonly number[], decimals = 0): string =>
  parts.map((part) => share(values, part).toFixed(decimals)).join(' / ');

const counted = (words: readonly string[]): string =>
  [...new Set(words)]
    .sort()
    .map((word) => `${words.filter((other) => other === word).length} ${word}`)
    .join(', ') || 'none';

/** What is asked about a number of flights, a line each. */
export const tableOf = (flights: readonly GridFlight[]): readonly (readonly [string, string])[] => {
  const landed = flights.filter(({ outcome }) => outcome === 'stopped' || outcome === 'ran-off');
  const touches = flights.flatMap(({ contacts }) => contacts.filter(({ bounce }) => !bounce));
  const all = flights.flatMap(({ contacts }) => contacts);
  const last = landed.map(({ contacts }) => contacts.filter(({ bounce }) => !bounce).at(-1));
  const beyond = last.map((touch) => touch?.beyondPointM ?? Number.NaN);
  const flaps = flights.flatMap((flight) => flight.flaps);
  const lastFlaps = landed.flatMap((flight) => flight.flaps.slice(-1));
  const fast = landed.map(({ fastOverThresholdKt }) => fastOverThresholdKt);
  const inside = (values: readonly number[], low: number, high: number): string =>
    `${((100 * values.filter((value) => value >= low && value <= high).length) / values.length).toFixed(0)} %`;
  return [
    ['outcomes', counted(flights.map(({ outcome }) => outcome))],
    [
      'first touch, ft/min: 50 / 95 / 100 %',
      spread(
        touches.map((t) => t.sinkFpm),
        [0.5, 0.95, 1],
      ),
    ],
    [
      'any contact, ft/min: 50 / 95 / 100 %',
      spread(
        all.map((t) => t.sinkFpm),
        [0.5, 0.95, 1],
      ),
    ],
    ['bounces of a foot', `${all.length - touches.length}`],
    [
      'beyond the point, m: 5 / 50 / 95 %',
      `${spread(beyond, [0.05, 0.5, 0.95])}; ${inside(beyond, -15, 120)} in -15..120`,
    ],
    [
      'over threshold less brief, kt: 5 / 50 / 95 %',
      `${spread(fast, [0.05, 0.5, 0.95], 1)}; ${inside(fast, -4, 4)} within 4`,
    ],
    [
      'mains to nose wheel, s: 5 / 50 / 95 %',
      spread(
        landed.map((f) => f.noseAfterS),
        [0.05, 0.5, 0.95],
        1,
      ),
    ],
    [
      'nose down at, deg/s: 50 / 95 %',
      spread(
        landed.map((f) => f.noseRateDegps),
        [0.5, 0.95],
        1,
      ),
    ],
    ['braked before the nose wheel', `${landed.filter((f) => f.brakeBeforeNose).length}`],
    [
      'throttle rounded out: 50 / 95 / 100 %',
      spread(
        landed.map((f) => f.throttleRoundedOut),
        [0.5, 0.95, 1],
        2,
      ),
    ],
    [
      'throttle at touch: 50 / 95 / 100 %',
      spread(
        last.map((t) => t?.throttle ?? Number.NaN),
        [0.5, 0.95, 1],
        2,
      ),
    ],
    [
      'drift at touch, kt: 50 / 95 / 100 %',
      spread(
        last.map((t) => t?.driftKt ?? Number.NaN),
        [0.5, 0.95, 1],
        1,
      ),
    ],
    [
      'crab at touch, deg: 50 / 95 / 100 %',
      spread(
        last.map((t) => t?.crabDeg ?? Number.NaN),
        [0.5, 0.95, 1],
        1,
      ),
    ],
    [
      'off the centreline, m: 50 / 95 / 100 %',
      spread(
        last.map((t) => t?.centrelineM ?? Number.NaN),
        [0.5, 0.95, 1],
        1,
      ),
    ],
    [
      'last flap, ft: 0 / 5 / 50 / 95 %',
      spread(
        lastFlaps.map((f) => f.heightFt),
        [0, 0.05, 0.5, 0.95],
      ),
    ],
    [
      'bank at the last flap, deg: 50 / 95 / 100 %',
      spread(
        lastFlaps.map((f) => f.bankDeg),
        [0.5, 0.95, 1],
      ),
    ],
    [
      'bank at any flap, deg: 50 / 95 / 100 %',
      spread(
        flaps.map((f) => f.bankDeg),
        [0.5, 0.95, 1],
      ),
    ],
    [
      'kt under the limit at any flap: 0 / 5 %',
      spread(
        flaps.map((f) => f.limitKt - f.iasKt),
        [0, 0.05],
      ),
    ],
    [
      'flap on final, degrees above slope: 0 / 5 %',
      spread(
        flaps.map((f) => f.aboveSlopeDeg),
        [0, 0.05],
        2,
      ),
    ],
    [
      'left at the stop, m: 0 / 5 %',
      spread(
        landed.map((f) => f.remainingM),
        [0, 0.05],
      ),
    ],
    ['go-arounds', counted(flights.flatMap((f) => f.goArounds))],
  ];
};
