import { ftFromM, mFromFt } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import { LOOK_HZ } from '../../flown.ts';
import type { Look } from '../../look.ts';
import { topOfDescent } from '../own/own-descent.ts';
import type { Departure, Finder } from './departure.ts';
import { lastOf, looksOn, meanOver } from './span.ts';

const SETTLE_S = 8;
const LEVEL_S = 6;
const LEAST_HEIGHT_M = mFromFt(60);
const CLIMBING_MPS = 1;
const CLIMB_LEGS: ReadonlySet<string> = new Set(['crosswind', 'turn-to-downwind', 'downwind']);

/** Not at circuit height when the threshold comes abeam; below it but still climbing, it is merely late. */
export const findHeight: Finder = (span) => {
  const { plan } = span.flown.flight;
  const before = looksOn(span, 'downwind', SETTLE_S).filter((look) => look.xM > 0);
  const settled = lastOf(before, LEVEL_S);
  const [first] = settled;
  if (first === undefined) return [];
  const higherM = meanOver(settled, (look) => look.heightM - plan.heightM);
  const climbing = meanOver(settled, (look) => look.verticalSpeedMps) > CLIMBING_MPS;
  if (Math.abs(higherM) < LEAST_HEIGHT_M || (higherM < 0 && climbing)) return [];
  const off = (look: Look): boolean =>
    (look.heightM - plan.heightM) * Math.sign(higherM) > LEAST_HEIGHT_M / 2;
  const begun =
    higherM > 0 ? span.looks.find((look) => CLIMB_LEGS.has(look.leg) && off(look)) : before.find(off);
  const atS = begun?.timeS ?? first.timeS;
  const size = Math.max(10, 10 * Math.round(ftFromM(Math.abs(higherM)) / 10));
  return [
    {
      kind: 'height',
      leg: 'downwind',
      atS,
      forkS: atS,
      size,
      unit: 'ft',
      sense: higherM > 0 ? 1 : -1,
      suggests: true,
      keep: (style) => ({ ...style, higherM }),
      mend: (style, units) => ({
        ...style,
        higherM: units >= size ? 0 : higherM - Math.sign(higherM) * mFromFt(units),
      }),
      say: (units) => `Fly downwind ${fixed(units)} ft ${higherM > 0 ? 'lower' : 'higher'}.`,
    },
  ];
};

const LEAST_LATE_M = 250;
/** So much lower so many seconds later, the descent has begun: about 250 ft/min. */
const DROP_M = 10;
const DROP_S = 8;

/** The first look from which the flight goes down and not just wanders. */
const beginOfDescent = (looks: readonly Look[]): Look | undefined => {
  const ahead = DROP_S * LOOK_HZ;
  return looks.find((look, i) => {
    const later = looks[i + ahead];
    return later !== undefined && look.heightM - later.heightM > DROP_M;
  });
};

/** The descent begun elsewhere than the plan has it: judged by what was left to fly. */
export const findDescent: Finder = (span) => {
  const { briefing } = span.flown;
  const { topM, fromM } = topOfDescent(briefing);
  const downwind = span.looks.filter((look) => look.leg === 'downwind' && look.xM > 0);
  const levelM = downwind.length === 0 ? topM : meanOver(downwind.slice(-10), (look) => look.heightM);
  const since = downwind[downwind.length - 1]?.timeS ?? 0;
  const begun = beginOfDescent(span.looks.filter((look) => look.timeS > since));
  const planned = span.looks.find((look) => look.timeS > since && look.toGoM <= fromM);
  if (begun === undefined || planned === undefined || downwind.length === 0) return [];
  const speed = Math.max(15, planned.groundspeedMps);
  const lateM = fromM - begun.toGoM;
  if (lateM < LEAST_LATE_M || Math.abs(levelM - topM) > LEAST_HEIGHT_M) return [];
  const size = Math.max(1, Math.round(lateM / speed));
  const atS = planned.timeS;
  return [
    {
      kind: 'descent',
      leg: planned.leg,
      atS,
      forkS: Math.max(span.fromS, atS - 2),
      size,
      unit: 's',
      sense: 1,
      suggests: true,
      keep: (style) => ({ ...style, descentLateM: Math.min(lateM, fromM - 200) }),
      mend: (style, units) => ({
        ...style,
        descentLateM: units >= size ? 0 : Math.min(lateM, fromM - 200) - units * speed,
      }),
      say: (units) => `Begin the descent ${fixed(units)} s earlier.`,
    } satisfies Departure,
  ];
};
