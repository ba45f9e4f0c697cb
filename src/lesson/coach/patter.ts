import { askedRpm, saidRpm } from '../../circuit/said-rpm.ts';
import type { CircuitLeg, LegPlan } from '../../circuit/types.ts';
import { manifoldPa } from '../../simulation/engine/engine.ts';
import type { Steady } from '../../simulation/performance/steady.ts';
import { headingDeg, magneticFromTrue } from '../../units/angles.ts';
import { degFromRad, ftFromM, hpaFromPa, inHgFromHpa, ktFromMps } from '../../units/conversions.ts';
import { fixed, headingDigits, thousands, thousandsTo } from '../../units/format.ts';
import type { TurnOnto } from '../names.ts';
import type { CoachContext } from './context.ts';

/**
 * The figures of an instructor's patter, rounded as they are said: every one from the plan that is briefed.
 */

export const knots = (mps: number): string => `${fixed(ktFromMps(mps))} knots`;

export const flapWords = ({ lesson }: CoachContext, stage: number): string =>
  stage === 0 ? 'flap up' : `flap ${fixed(lesson.aeroplane.flap.stages[stage]?.deg ?? 0)}`;

/** To hold on a leg, magnetic. */
export const headingWords = ({ lesson }: CoachContext, leg: CircuitLeg): string => {
  const { headingRadT } = lesson.plan.legs[leg];
  const deg = headingDeg(magneticFromTrue(headingRadT, lesson.runway.variationRad));
  return `heading ${headingDigits(deg)}`;
};

const FAR_ENOUGH_M = 100; // our choice: less is not worth a word
const FULL = 0.98; // our choice: tells what is being done
export const IDLE = 0.02; // our choice: tells what is being done

/** What one's own card asks for on the leg, else what the gauges show: rpm as it is briefed; where a governor keeps those, manifold pressure first. */
export const powerWords = (
  c: CoachContext,
  { throttle, revps, propeller }: Steady,
  leg: 'downwind' | 'base' | 'final' | null = null,
): string => {
  if (leg !== null && c.lesson.aeroplane.plan.cardRpm?.[leg] !== undefined)
    return `${thousands(askedRpm(c.lesson.aeroplane, leg, { revps }))} rpm`;
  if (throttle > FULL) return 'full power';
  if (throttle < IDLE) return 'throttle closed';
  const rpm = `${thousands(saidRpm(revps))} rpm`;
  if (c.lesson.aeroplane.propeller.kind !== 'constant-speed') return rpm;
  // At one place it is a share of the pressure outside, which the gauge of this moment tells
  const { s } = c;
  const outsidePa = s.manifoldPa / manifoldPa(1, s.throttle, s.engineRevps);
  const pa = manifoldPa(outsidePa, throttle, revps);
  const inches = `${fixed(inHgFromHpa(hpaFromPa(pa)))} inches`;
  return propeller < FULL ? `${inches} and ${rpm}` : inches;
};

/** Circuit height as the altimeter shows it on QNH. */
export const circuitAltitudeWords = ({ lesson, s }: CoachContext): string => {
  const { thresholdElevationM } = lesson.runway;
  // In warm air it shows less for each foot climbed: as now, so there
  const shownPerM = s.heightM > FAR_ENOUGH_M ? (s.altitudeM - thresholdElevationM) / s.heightM : 1;
  return `${thousandsTo(ftFromM(thresholdElevationM + shownPerM * lesson.plan.heightM), 10)} feet`;
};

export const sinkWords = (verticalSpeedMps: number): string =>
  `${thousandsTo(60 * ftFromM(-verticalSpeedMps), 50)} feet a minute`;

export const handWords = ({ lesson }: CoachContext): 'left' | 'right' =>
  lesson.plan.side === 1 ? 'right' : 'left';

/** Bank of a planned turn, to the next five degrees. */
export const bankWords = ({ lesson }: CoachContext, onto: TurnOnto): string =>
  `${fixed(5 * Math.round(degFromRad(Math.abs(lesson.plan.turns[onto].bankRad)) / 5))} degrees of bank`;

/** Carburettor heat comes before the power goes, where there is any. */
export const heatFirst = ({ lesson, s }: CoachContext): string =>
  lesson.aeroplane.engine.carburettor && s.carbHeat === 0 ? 'carburettor heat hot, ' : '';

/** How the power comes back for a descent: the words for the leg, unless it is closed already. */
export const descentWords = (c: CoachContext, leg: LegPlan, steady: Steady): string =>
  `${heatFirst(c)}power back to ${powerWords(c, steady)}, hold the nose until ${knots(leg.iasMps)}, then let it come down`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
