import { solveSteady } from '../../../simulation/performance/steady.ts';
import { rpmFromRevps } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import type { Look } from '../../look.ts';
import type { StyleLeg } from '../own/style.ts';
import type { Departure, Finder } from './departure.ts';
import { lastOf, looksOn, meanOver, type Span } from './span.ts';

const SETTLE_S = 4;
const LEAST_THROTTLE = 0.06;
/** Nearer to the plan than this share of where the leg began: it is being mended. */
const MENDING = 0.85;
const LEAST_OFF_M = 8;
const STEP_RPM = 25;
const STEP_PERCENT = 2;

/** Revolutions a minute that a whole throttle is worth near the power of a leg; null with a governor. */
const rpmPerThrottle = (span: Span, leg: StyleLeg): number | null => {
  const { model, flight } = span.flown;
  const { flapDeg, iasMps, verticalSpeedMps, from } = flight.plan.legs[leg];
  if (model.scenario.aeroplane.propeller.kind === 'constant-speed') return null;
  const [low, high] = [verticalSpeedMps, verticalSpeedMps + 1].map((sink) =>
    solveSteady(model.shape, model.air, {
      iasMps,
      altitudeM: model.runway.thresholdElevationM + from.heightM,
      flapDeg,
      gear: 1,
      bankRad: 0,
      carbHeat: 0,
      verticalSpeedMps: sink,
    }),
  );
  if (low?.ok !== true || high?.ok !== true) return null;
  const rpm = rpmFromRevps(high.steady.revps - low.steady.revps);
  const throttle = high.steady.throttle - low.steady.throttle;
  return throttle > 0.01 ? rpm / throttle : null;
};

const heightOffM = (look: Look): number => look.heightM - look.plannedHeightM;

const BEGUN_M = 15;
/** On downwind only the descent is looked at. */
const isDescending = (span: Span, look: Look): boolean =>
  look.plannedHeightM < span.flown.flight.plan.heightM - BEGUN_M;

/** Beyond the place of the base turn a power is wrong because the turn is late: kept, but not to be mended there. */
const isBeyond = ({ flown }: Span, look: Look): boolean => look.xM < flown.briefing.corners.base.fromX;

const powerOnDownwind = (span: Span): readonly Departure[] => {
  const looks = looksOn(span, 'downwind', SETTLE_S).filter((look) => isDescending(span, look));
  const before = powerIn(
    span,
    'downwind',
    looks.filter((look) => !isBeyond(span, look)),
    true,
  );
  if (before.length > 0) return before;
  const turning = span.looks.filter((look) => look.leg === 'turn-to-base');
  const beyond = looks.filter((look) => isBeyond(span, look));
  return beyond.length === 0 ? [] : powerIn(span, 'downwind', [...beyond, ...turning], false);
};

const powerIn = (
  span: Span,
  leg: StyleLeg,
  looks: readonly Look[],
  suggests: boolean,
): readonly Departure[] => {
  const [first] = looks;
  if (first === undefined || looks.length < 4) return [];
  const flown = meanOver(lastOf(looks, 15), (look) => look.throttle);
  const beside = meanOver(looks, (look) => look.throttle - look.askedThrottle);
  const endM = meanOver(lastOf(looks, 3), (look) => heightOffM(look));
  if (Math.abs(beside) < LEAST_THROTTLE) return [];
  // Too much power leaves the aeroplane above where it ought to be, too little below; what is being mended is no fault
  if (
    beside * endM <= 0 ||
    Math.abs(endM) < MENDING * Math.abs(heightOffM(first)) ||
    Math.abs(endM) < LEAST_OFF_M
  )
    return [];
  const perThrottle = rpmPerThrottle(span, leg);
  const inSteps =
    perThrottle === null
      ? (100 * Math.abs(beside)) / STEP_PERCENT
      : (Math.abs(beside) * perThrottle) / STEP_RPM;
  const grain = perThrottle === null ? STEP_PERCENT : STEP_RPM;
  const size = grain * Math.max(1, Math.round(inSteps));
  const throttleOf = (units: number): number => units / (perThrottle ?? 100);
  const legFromS =
    leg === 'downwind' ? first.timeS : (span.looks.find((look) => look.leg === leg)?.timeS ?? first.timeS);
  return [
    {
      kind: 'power',
      leg,
      atS: legFromS,
      forkS: legFromS,
      size,
      unit: perThrottle === null ? '%' : 'rpm',
      sense: beside > 0 ? 1 : -1,
      suggests,
      keep: (style) => ({ ...style, setThrottle: { ...style.setThrottle, [leg]: flown } }),
      mend: (style, units) => ({
        ...style,
        setThrottle: {
          ...style.setThrottle,
          [leg]: units >= size ? null : flown - Math.sign(beside) * throttleOf(units),
        },
      }),
      say: (units) =>
        perThrottle === null
          ? `${fixed(units)} % ${beside > 0 ? 'less' : 'more'} power on ${leg}, from here.`
          : `${fixed(units)} rpm ${beside > 0 ? 'less' : 'more'} on ${leg}, from here.`,
    } satisfies Departure,
  ];
};

export const findPower: Finder = (span) => [
  ...powerOnDownwind(span),
  ...powerIn(span, 'base', looksOn(span, 'base', SETTLE_S), true),
  ...powerIn(span, 'final', looksOn(span, 'final', SETTLE_S), true),
];
