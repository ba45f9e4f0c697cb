import { lastWhere } from '../../../lesson/last-where.ts';
import { ktFromMps, mpsFromKt } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import type { Style, StyleLeg } from '../own/style.ts';
import type { Departure, Finder } from './departure.ts';
import { lastOf, looksOn, meanOver, type Span } from './span.ts';

const SETTLE_S = 6;
const FAST_MPS = mpsFromKt(4);
const SLOW_MPS = mpsFromKt(3);
const ENDING_S = 8;
const LEGS: readonly StyleLeg[] = ['downwind', 'base', 'final'];

const wantedMps = (span: Span, leg: StyleLeg): number => {
  const { briefing, flight } = span.flown;
  return leg === 'final' ? flight.plan.approachIasMps : briefing.habits[leg].iasMps;
};

/** Beside the planned speed at the end of a leg, where that is more than it may be. */
const besideOn = (span: Span, leg: StyleLeg): number => {
  const looks = lastOf(looksOn(span, leg, leg === 'final' ? 3 : SETTLE_S), ENDING_S);
  if (looks.length < 4) return 0;
  const beside = meanOver(looks, (look) => look.iasMps) - wantedMps(span, leg);
  return beside > FAST_MPS || beside < -SLOW_MPS ? beside : 0;
};

/** The trim wheel left alone: what is held on base and final stays above this. */
const HELD_DEG_KPA = 0.45;
const WHEEL_STILL = 0.06;

/** A speed beside the plan's held leg after leg is one departure; with a force in the hand that explains it, the trim's. */
export const findSpeed: Finder = (span) => {
  const fasterMps = { downwind: 0, base: 0, final: 0 };
  for (const leg of LEGS) fasterMps[leg] = besideOn(span, leg);
  const first = LEGS.find((leg) => fasterMps[leg] !== 0);
  if (first === undefined) return [];
  const runs: StyleLeg[][] = [];
  for (const leg of LEGS) {
    if (fasterMps[leg] === 0) continue;
    const run = runs[runs.length - 1];
    const before = run?.[run.length - 1];
    const follows =
      before !== undefined &&
      LEGS.indexOf(leg) === LEGS.indexOf(before) + 1 &&
      fasterMps[before] * fasterMps[leg] > 0;
    if (follows) run?.push(leg);
    else runs.push([leg]);
  }
  return runs.map((legs) => speedDeparture(span, legs, fasterMps));
};

const speedDeparture = (
  span: Span,
  legs: readonly StyleLeg[],
  fasterMps: Readonly<Record<StyleLeg, number>>,
): Departure => {
  const leg = legs[0] as StyleLeg;
  const most = legs.reduce((sum, on) => (Math.abs(fasterMps[on]) > Math.abs(sum) ? fasterMps[on] : sum), 0);
  const size = Math.max(1, Math.round(ktFromMps(Math.abs(most))));
  const atS = span.looks.find((look) => look.leg === leg)?.timeS ?? span.fromS;
  const set = (style: Style, of: (on: StyleLeg) => number): Style => ({
    ...style,
    fasterMps: {
      downwind: legs.includes('downwind') ? of('downwind') : style.fasterMps.downwind,
      base: legs.includes('base') ? of('base') : style.fasterMps.base,
      final: legs.includes('final') ? of('final') : style.fasterMps.final,
    },
  });
  return {
    kind: 'speed',
    leg,
    atS,
    forkS: atS,
    size,
    unit: 'kt',
    sense: most > 0 ? 1 : -1,
    suggests: true,
    keep: (style) => set(style, (on) => fasterMps[on]),
    mend: (style, units) =>
      set(style, (on) => {
        const left = Math.abs(fasterMps[on]) - mpsFromKt(units);
        return units >= size || left < 0 ? 0 : Math.sign(fasterMps[on]) * left;
      }),
    say: (units) =>
      `Hold the speed on ${legs.join(' and ')}: ${fixed(units)} kt ${most > 0 ? 'slower' : 'faster'}.`,
  };
};

/** The wheel left where it was while the hand had to hold the difference. */
export const findTrim: Finder = (span) => {
  const { instants } = span.flown;
  const wheels = instants.filter(({ step }) => step / 60 >= span.fromS && step / 60 <= span.toS);
  const abeam = lastWhere(span.looks, (look) => look.leg === 'downwind' && look.xM > 0);
  if (abeam === null) return [];
  const after = wheels.filter(({ step }) => step / 60 > abeam.timeS);
  const [begun] = after;
  if (begun === undefined) return [];
  const wheel = begun.controls.trim;
  const moved = after.reduce((far, { controls }) => Math.max(far, Math.abs(controls.trim - wheel)), 0);
  const looks = [...looksOn(span, 'base', 4), ...looksOn(span, 'final', 4)];
  if (looks.length < 12 || moved > WHEEL_STILL) return [];
  const held = looks.map((look) => Math.abs(look.heldDegKpa)).sort((a, b) => a - b);
  const middle = held[held.length >> 1] ?? 0;
  if (middle < HELD_DEG_KPA) return [];
  const mostDegKpa = held[Math.floor(0.9 * held.length)] ?? middle;
  return [
    {
      kind: 'trim',
      leg: 'base',
      atS: abeam.timeS,
      forkS: abeam.timeS,
      size: 1,
      unit: 'whole',
      sense: 1,
      suggests: true,
      keep: (style) => ({ ...style, untrimmed: { wheel, mostDegKpa } }),
      mend: (style) => ({ ...style, untrimmed: null }),
      say: () => 'Trim once power, flap and attitude are set for the descent.',
    },
  ];
};
