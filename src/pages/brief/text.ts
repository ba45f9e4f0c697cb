import type { LegBrief, StretchBrief } from '../../circuit/brief/types.ts';
import { saidRpm } from '../../circuit/said-rpm.ts';
import type { PlanOptions } from '../../circuit/types.ts';
import { headingDeg } from '../../units/angles.ts';
import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  hpaFromPa,
  inHgFromHpa,
  ktFromMps,
  nmiFromM,
} from '../../units/conversions.ts';
import { fixed, headingDigits, thousands, thousandsTo } from '../../units/format.ts';
import type { CircuitChoice } from '../settings.ts';

/** Figures of the brief as they are read out: headings in three digits, heights and powers to ten. */
export const headingText = (rad: number): string => headingDigits(headingDeg(rad));
export const feetText = (m: number): string => thousandsTo(ftFromM(m), 10);
export const knotsText = (mps: number): string => fixed(ktFromMps(mps));
export const secondsText = (s: number): string => fixed(s);
export const rpmText = (revps: number): string => thousands(saidRpm(revps));

export const driftText = (rad: number): string => {
  const deg = Math.round(Math.abs(degFromRad(rad)));
  return deg === 0 ? 'none' : `${deg}° ${rad > 0 ? 'right' : 'left'}`;
};

export const sinkText = (mps: number): string => {
  const fpm = Math.round(fpmFromMps(mps) / 10) * 10;
  return fpm === 0 ? 'level' : `${fpm > 0 ? '+' : '−'}${thousandsTo(Math.abs(fpm), 10)}`;
};

export const powerText = ({ way, fullPower, revps, manifoldPa }: StretchBrief): string => {
  if (way === 'gliding') return 'idle';
  const rpm = rpmText(revps);
  if (fullPower) return `full, ${rpm}`;
  return manifoldPa === null ? rpm : `${fixed(inHgFromHpa(hpaFromPa(manifoldPa)), 1)} in, ${rpm}`;
};

export const legName = (leg: LegBrief['leg']): string => leg.charAt(0).toUpperCase() + leg.slice(1);

export const flapText = (deg: number): string => (deg === 0 ? 'up' : `${fixed(deg)}°`);

const rounded = (x: number): number => Math.round(x * 1e4) / 1e4;

/** A way out as the settings keep it. */
export const choiceOf = (options: PlanOptions): CircuitChoice => ({
  ...(options.spacingM !== undefined && { spacingNmi: rounded(nmiFromM(options.spacingM)) }),
  ...(options.approachRad !== undefined && { approachDeg: rounded(degFromRad(options.approachRad)) }),
  ...(options.descentFrom !== undefined && { descentFrom: options.descentFrom }),
  ...(options.finalFromAimM !== undefined && { finalFromAimNmi: rounded(nmiFromM(options.finalFromAimM)) }),
});

/** The chosen circuit in words. */
export const choiceWords = (choice: CircuitChoice): string => {
  const parts = [
    choice.spacingNmi === undefined ? '' : `${fixed(choice.spacingNmi, 2)} NM wide`,
    choice.approachDeg === undefined ? '' : `${fixed(choice.approachDeg, 1)}° on final`,
    choice.descentFrom === undefined
      ? ''
      : choice.descentFrom === 'abeam'
        ? 'down from abeam'
        : 'level to the base turn',
    choice.finalFromAimNmi === undefined ? '' : `final from ${fixed(choice.finalFromAimNmi, 2)} NM`,
  ];
  return parts.filter((part) => part !== '').join(', ');
};
