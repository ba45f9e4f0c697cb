import { wrapPi } from '../../../units/angles.ts';
import { degFromRad, radFromDeg } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import type { Look } from '../../look.ts';
import type { StyleLeg } from '../own/style.ts';
import type { Departure, Finder } from './departure.ts';
import { lastOf, looksOn, meanOver, type Span } from './span.ts';

const SETTLE_S = 5;
/** Straighter than this a track was held. */
const LEAST_RAD = radFromDeg(4);
const LEAST_BASE_RAD = radFromDeg(8);
/** Off the line by this share of the spacing, and not coming back: the line was not held. */
const OFF_SHARE = 0.12;
const OFF_FINAL_M = 25;
const ENDING_S = 12;

const ALONG_RAD: Readonly<Record<StyleLeg, number>> = {
  downwind: Math.PI,
  base: -Math.PI / 2,
  final: 0,
};

/** Off the planned line, + further from the runway (on final: to the circuit side). */
const offLineM = (span: Span, leg: StyleLeg, look: Look): number =>
  leg === 'downwind' ? look.yM - span.flown.flight.plan.spacingM : look.yM;

const driftOn = (span: Span, leg: StyleLeg): readonly Departure[] => {
  const looks = looksOn(span, leg, SETTLE_S);
  const [first] = looks;
  const last = looks[looks.length - 1];
  if (first === undefined || last === undefined || last.timeS - first.timeS < SETTLE_S) return [];
  const offRad = meanOver(looks, (look) => wrapPi(look.trackRad - ALONG_RAD[leg]));
  const endM = meanOver(lastOf(looks, ENDING_S / 4), (look) => offLineM(span, leg, look));
  const beginM = offLineM(span, leg, first);
  if (leg === 'base') {
    if (Math.abs(offRad) < LEAST_BASE_RAD) return [];
  } else {
    const roomM = leg === 'downwind' ? OFF_SHARE * span.flown.flight.plan.spacingM : OFF_FINAL_M;
    // The line was come back to, or hardly left
    if (Math.abs(endM) < roomM) return [];
    const regained = Math.abs(endM) < 0.8 * Math.abs(beginM) && Math.abs(beginM) > roomM;
    if (regained && Math.abs(offRad) > LEAST_RAD) return [];
  }
  const size = Math.max(1, Math.round(degFromRad(Math.abs(offRad))));
  const drifted = Math.abs(offRad) >= (leg === 'base' ? LEAST_BASE_RAD : LEAST_RAD);
  // Off the line from its beginning but parallel to it: kept, though it was the turn before that led there
  const legFromS = span.looks.find((look) => look.leg === leg)?.timeS ?? first.timeS;
  return [
    {
      kind: 'drift',
      leg,
      atS: legFromS,
      forkS: legFromS,
      size,
      unit: 'deg',
      sense: offRad > 0 ? 1 : -1,
      suggests: drifted || leg === 'final',
      keep: (style) => ({ ...style, trackOffRad: { ...style.trackOffRad, [leg]: offRad } }),
      mend: (style, units) => ({
        ...style,
        trackOffRad: {
          ...style.trackOffRad,
          [leg]: units >= size ? null : offRad - Math.sign(offRad) * radFromDeg(units),
        },
      }),
      say: (units) => `Hold the drift on ${leg}: ${fixed(units)} degrees ${sideOf(span, leg, -offRad)}.`,
    },
  ];
};

/** Which way to point the nose for a change of track, angles counting towards the circuit side from upwind. */
const sideOf = (span: Span, _leg: StyleLeg, changeRad: number): string =>
  changeRad * span.flown.flight.plan.side > 0 ? 'to the right' : 'to the left';

export const findDrift: Finder = (span) =>
  (['downwind', 'base', 'final'] as const).flatMap((leg) => driftOn(span, leg));
