import { ftFromM, mFromFt, radFromDeg } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { Departure, Finder } from './departure.ts';
import { topOfDescent } from './own-way.ts';
import { looksOn, meanOver } from './span.ts';

const SETTLE_S = 8;
const LEAST_HEIGHT_M = mFromFt(60);
const LEVEL_RAD = radFromDeg(1.5);

/** Level on downwind, and not at circuit height. */
export const findHeight: Finder = (span) => {
  const { plan } = span.flown.flight;
  const level = looksOn(span, 'downwind', SETTLE_S).filter(
    (look) => look.xM > 0 && Math.abs(look.verticalSpeedMps) < LEVEL_RAD * look.groundspeedMps,
  );
  const [first] = level;
  if (first === undefined) return [];
  const settled = level.slice(level.length >> 1);
  const higherM = meanOver(settled, (look) => look.heightM - plan.heightM);
  if (Math.abs(higherM) < LEAST_HEIGHT_M) return [];
  const size = Math.max(10, 10 * Math.round(ftFromM(Math.abs(higherM)) / 10));
  return [
    {
      kind: 'height',
      leg: 'downwind',
      atS: first.timeS,
      forkS: first.timeS,
      size,
      unit: 'ft',
      sense: higherM > 0 ? 1 : -1,
      suggests: true,
      keep: (manner) => ({ ...manner, higherM }),
      mend: (manner, units) => ({
        ...manner,
        higherM: units >= size ? 0 : higherM - Math.sign(higherM) * mFromFt(units),
      }),
      say: (units) => `Fly downwind ${fixed(units)} ft ${higherM > 0 ? 'lower' : 'higher'}.`,
    },
  ];
};

const LEAST_LATE_M = 250;
/** This far below the level it was flown at, the descent has begun. */
const BEGUN_M = 25;

/** The descent begun elsewhere than the plan has it: judged by what was left to fly. */
export const findDescent: Finder = (span) => {
  const { briefing } = span.flown;
  const { topM, fromM } = topOfDescent(briefing);
  const downwind = span.looks.filter((look) => look.leg === 'downwind' && look.xM > 0);
  const levelM = downwind.length === 0 ? topM : meanOver(downwind.slice(-10), (look) => look.heightM);
  const later = span.looks.filter((look) => look.xM <= 0 && look.timeS > (downwind[0]?.timeS ?? 0));
  const begun = later.find((look) => look.heightM < levelM - BEGUN_M);
  const planned = span.looks.find(
    (look) => look.timeS > (downwind[0]?.timeS ?? 0) && look.plannedHeightM < topM - BEGUN_M,
  );
  if (begun === undefined || planned === undefined || downwind.length === 0) return [];
  const speed = Math.max(15, planned.groundspeedMps);
  // The model pilot takes a moment to begin; from a wrong height it joins the plan as it comes
  const lateM = planned.toGoM - begun.toGoM - ANSWER_S * speed;
  if (lateM < LEAST_LATE_M || Math.abs(levelM - topM) > LEAST_HEIGHT_M) return [];
  const size = Math.max(1, Math.round(lateM / speed));
  const atS = planned.timeS - BEGUN_M / 3;
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
      keep: (manner) => ({ ...manner, descentLateM: Math.min(lateM, fromM - 200) }),
      mend: (manner, units) => ({
        ...manner,
        descentLateM: units >= size ? 0 : Math.min(lateM, fromM - 200) - units * speed,
      }),
      say: (units) => `Begin the descent ${fixed(units)} s earlier.`,
    } satisfies Departure,
  ];
};
const ANSWER_S = 3;
