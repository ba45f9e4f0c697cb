/**
 * Faults whose root is known because they were put in, the days they are flown on, and what the search for the root
 * should say of each: which change, and when. Bands: a turn within 4 s of where it should have been made; what is
 * held over a leg within 12 s of where it began (a leg's speed or track takes that long to settle, common practice).
 */
import type { LegName } from '../../src/lesson/names.ts';
import type { ChangeKind } from '../../src/study/root/finders/departure.ts';
import type { Change } from '../../src/study/root/result.ts';
import type { Day } from './circuit-flight.ts';
import {
  baseTurned,
  byRote,
  descentLate,
  downwindTurned,
  driftNotHeldOnDownwind,
  driftNotHeldOnFinal,
  type Fault,
  type FaultFlight,
  finalTurned,
  flapNotTaken,
  highOnDownwind,
  noFault,
  powerOnBase,
  powerOnFinal,
  shallowFinalTurn,
  speedFrom,
  trimLeft,
} from './faults.ts';

export interface RootCase {
  readonly name: string;
  readonly faults: readonly Fault[];
  /** The same pilot without the fault. */
  readonly twin: Fault;
  readonly kind: ChangeKind;
  readonly leg: LegName;
  /** After the fault began (before: negative). */
  readonly afterS: number;
  readonly bandS: number;
  /** Two days of the short run on which the fault spoils the approach. */
  readonly days: readonly [string, string];
}

const TURN_BAND_S = 4;
const LEG_BAND_S = 12;

const kind = (
  name: string,
  faults: readonly Fault[],
  change: readonly [ChangeKind, LegName],
  days: readonly [string, string],
  more: Partial<RootCase> = {},
): RootCase => ({
  name,
  faults,
  twin: noFault,
  kind: change[0],
  leg: change[1],
  afterS: 0,
  bandS: LEG_BAND_S,
  days,
  ...more,
});

const rote = byRote(noFault);
const turn = { bandS: TURN_BAND_S };

export const ROOT_CASES: readonly RootCase[] = [
  kind(
    'base turned early',
    [baseTurned(-18), baseTurned(-14)],
    ['turn', 'turn-to-base'],
    ['still', 'from the left'],
    turn,
  ),
  kind(
    'base turned late, power by rote',
    [byRote(baseTurned(20))],
    ['turn', 'turn-to-base'],
    ['still', 'headwind'],
    {
      ...turn,
      twin: rote,
      afterS: -20,
    },
  ),
  kind('final turned late', [finalTurned(10)], ['turn', 'turn-to-final'], ['still', 'headwind'], {
    ...turn,
    afterS: -10,
  }),
  kind(
    'downwind turned late, power by rote',
    [byRote(downwindTurned(20))],
    ['turn', 'turn-to-downwind'],
    ['still', 'headwind'],
    {
      ...turn,
      twin: rote,
      afterS: -20,
    },
  ),
  kind('too much power on base', [powerOnBase(0.3)], ['power', 'base'], ['still', 'tight, still']),
  kind(
    'too little power on base',
    [powerOnBase(-0.25)],
    ['power', 'base'],
    ['from the right, rough', 'tight, from the left'],
  ),
  kind(
    'too much power on final',
    [powerOnFinal(0.2)],
    ['power', 'final'],
    ['from the left', 'tight, from the right, rough'],
  ),
  kind(
    'too little power on final',
    [powerOnFinal(-0.2)],
    ['power', 'final'],
    ['still', 'tight, from the left'],
  ),
  kind(
    'fast from base on',
    [speedFrom('base', 8)],
    ['speed', 'base'],
    ['headwind', 'tight, from the right, rough'],
  ),
  kind('slow on final', [speedFrom('final', -4)], ['speed', 'final'], ['still', 'from the right, rough']),
  kind('flap not taken', [flapNotTaken()], ['flap', 'base'], ['still', 'tight, from the left']),
  kind(
    'drift not held on final',
    [driftNotHeldOnFinal()],
    ['drift', 'final'],
    ['from the left', 'from the right, rough'],
  ),
  kind(
    'drift not held on downwind, power by rote',
    [byRote(driftNotHeldOnDownwind())],
    ['drift', 'downwind'],
    ['from the right, rough', 'tight, from the right, rough'],
    {
      twin: rote,
    },
  ),
  kind(
    'descent begun late',
    [descentLate(3000), descentLate(1500)],
    ['descent', 'downwind'],
    ['headwind', 'tight, still'],
  ),
  kind('trim left alone', [trimLeft(0.5), trimLeft(1)], ['trim', 'base'], ['still', 'headwind']),
  kind(
    'a final turn too shallow',
    [shallowFinalTurn(9)],
    ['bank', 'turn-to-final'],
    ['still', 'from the left'],
    turn,
  ),
  kind(
    'downwind too high',
    [highOnDownwind(200), highOnDownwind(150)],
    ['height', 'downwind'],
    ['headwind', 'tight, still'],
  ),
];

const tight = { aerodrome: 'plover-meadow' };

/** Winds from the landing direction, + clockwise; `tight`: a narrow circuit with a steep approach. */
export const DAYS: Readonly<Record<string, Day>> = {
  still: {},
  headwind: { windKt: 12, windDeg: 10 },
  'from the left': { windKt: 10, windDeg: 290 },
  'from the right, rough': { windKt: 10, windDeg: 70, turbulence: 'light' },
  'tight, still': tight,
  'tight, from the left': { ...tight, windKt: 12, windDeg: 280 },
  'tight, from the right, rough': { ...tight, windKt: 12, windDeg: 80, turbulence: 'light' },
};

/** The long run has some more. */
export const MORE_DAYS: Readonly<Record<string, Day>> = {
  ...DAYS,
  'a knot or two': { windKt: 4, windDeg: 120, turbulence: 'light' },
  gusting: { windKt: 12, windDeg: 30, gustKt: 20, turbulence: 'light' },
  'strong from the left': { windKt: 14, windDeg: 270 },
  'high and hot': { aerodrome: 'ptarmigan-flat', windKt: 8, windDeg: 40, temperatureC: 25 },
};

export const dayOf = (days: Readonly<Record<string, Day>>, name: string, seed = 1): Day => ({
  ...days[name],
  leg: 'crosswind',
  seed,
});

/** When the change should be made. */
export const expectedS = (root: RootCase, flown: FaultFlight): number => {
  if (root.kind === 'height') return flown.tooHighS ?? Number.NaN;
  return (flown.fromS ?? Number.NaN) + root.afterS;
};

export const isRight = (root: RootCase, flown: FaultFlight, change: Change | null): boolean =>
  change !== null &&
  change.kind === root.kind &&
  (change.leg === root.leg || root.kind === 'descent') &&
  Math.abs(change.atS - expectedS(root, flown)) <= root.bandS;
