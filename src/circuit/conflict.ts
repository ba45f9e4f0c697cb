import { atan } from '../maths/functions.ts';
import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  ktFromMps,
  mFromFt,
  mFromNmi,
  nmiFromM,
  radFromDeg,
} from '../units/conversions.ts';
import { fixed, thousandsTo } from '../units/format.ts';
import { type Chosen, chooseCircuit } from './choose.ts';
import { distanceOnSlopeM } from './descent-angle.ts';
import { type LightsStretch, lightsOnFinal, onSlopeWord } from './lights-on-final.ts';
import type { Setting } from './setting.ts';
import type { Conflict, PlanOptions } from './types.ts';

/**
 * A tight circuit, a final turn finished at 500 ft and a shallow slope cannot all be met, and a whiteboard hides
 * it. Here the planned path is asked what the pilot will see, and what could be given up instead.
 */

/** A final within this of what was asked is as asked. */
const SAME_ANGLE_RAD = radFromDeg(0.15);
/** Lights are judged above this (stabilised: last gate). */
const JUDGED_ABOVE_M = mFromFt(200);
/** Height at which a final turn is complete where nothing else is laid down (CASA Visual Flight Rules Guide). */
const FINAL_TURN_DONE_M = mFromFt(500);
const WIDER_STEP_M = mFromNmi(0.05);
const WIDEST_M = mFromNmi(2.5);

const degrees = (rad: number): string => fixed(degFromRad(rad), 1);
const plainDegrees = (rad: number): string => String(Math.round(degFromRad(rad) * 10) / 10);
const feet = (m: number): string => thousandsTo(ftFromM(m), 10);
const miles = (m: number): string => fixed(nmiFromM(m), 2);
const feetAMinute = (mps: number): string => thousandsTo(fpmFromMps(mps), 10);

const NUMBERS = ['no', 'one', 'two', 'three', 'four'] as const;

/** `WWWR` is "three whites and one red". */
export function lettersInWords(letters: string): string {
  const whites = [...letters].filter((letter) => letter === 'W').length;
  const reds = letters.length - whites;
  const words = (count: number, noun: string): string => `${NUMBERS[count]} ${noun}${count === 1 ? '' : 's'}`;
  if (reds === 0) return words(whites, 'white');
  if (whites === 0) return words(reds, 'red');
  return `${words(whites, 'white')} and ${words(reds, 'red')}`;
}

/** The stretch above the last gate that shows something else than the slope, the longest one; null when none. */
const offSlope = (stretches: readonly LightsStretch[] | null, units: number): LightsStretch | null => {
  let worst: LightsStretch | null = null;
  for (const stretch of stretches ?? []) {
    const lit = !stretch.letters.includes('-');
    if (!lit || stretch.letters === onSlopeWord(units) || stretch.fromHeightM < JUDGED_ABOVE_M) continue;
    if (worst === null || above(stretch) > above(worst)) worst = stretch;
  }
  return worst;
};
const above = (stretch: LightsStretch): number =>
  stretch.fromHeightM - Math.max(stretch.toHeightM, JUDGED_ABOVE_M);

/** What a chosen circuit cannot have, as one sentence; null when it can have everything. */
function sentenceOf(setting: Setting, chosen: Chosen): string | null {
  const { runway, eyeHeightM } = setting;
  const { lights } = runway;
  const { layout, approachRad, askedApproachRad } = chosen;
  const seen = lightsOnFinal(runway, layout, eyeHeightM);
  if (lights !== null) {
    const off = offSlope(seen, lights.unitsAcrossM.length);
    if (off !== null) {
      const allTheWay = off === seen?.at(-1);
      return `You will see ${lettersInWords(off.letters)} ${allTheWay ? 'all the way' : `until ${feet(off.toHeightM)} ft`}: this circuit comes down at ${degrees(approachRad)} degrees to ${plainDegrees(lights.angleRad)}-degree lights.`;
    }
  }
  if (approachRad > askedApproachRad + SAME_ANGLE_RAD)
    return `This circuit comes down at ${degrees(approachRad)} degrees where ${degrees(askedApproachRad)} were asked for, even with ${feetAMinute(layout.descentMps)} ft/min down before final.`;
  const wantedM = finalTurnDoneM(setting);
  if (wantedM !== null && layout.final.from.heightM < wantedM - mFromFt(10))
    return `The final turn is complete at ${feet(layout.final.from.heightM)} ft, not at ${feet(wantedM)} ft: on ${degrees(approachRad)} degrees that height is ${miles(distanceOnSlopeM(wantedM, approachRad))} NM from the aim point.`;
  return null;
}

const finalTurnDoneM = (setting: Setting): number | null => {
  const ft = setting.aerodrome.circuit.finalTurnDoneFt;
  return ft === undefined ? null : mFromFt(ft);
};

export function conflictOf(setting: Setting, chosen: Chosen, options: PlanOptions): Conflict | null {
  const sentence = sentenceOf(setting, chosen);
  if (sentence === null) return null;
  return {
    sentence,
    waysOut: [
      { id: 'wider', ...wider(setting, chosen, options) },
      { id: 'steeper', ...steeper(setting, chosen, options) },
      { id: 'lower', ...lower(setting, chosen, options) },
      { id: 'longer', ...longer(setting, chosen, options) },
    ],
  };
}

interface WayOut {
  readonly sentence: string;
  readonly options: PlanOptions | null;
}

/** The slope the ways out lead back to: the lights' where there are lights. */
const goalRad = (setting: Setting, chosen: Chosen): number =>
  setting.runway.lights?.angleRad ?? chosen.askedApproachRad;

const tryOut = (setting: Setting, options: PlanOptions): Chosen | null => {
  try {
    return chooseCircuit(setting, options);
  } catch {
    return null;
  }
};

function wider(setting: Setting, chosen: Chosen, options: PlanOptions): WayOut {
  const approachRad = goalRad(setting, chosen);
  for (let spacingM = chosen.spacingM + WIDER_STEP_M; spacingM <= WIDEST_M; spacingM += WIDER_STEP_M) {
    const out = { ...options, spacingM, approachRad };
    const circuit = tryOut(setting, out);
    if (circuit === null || sentenceOf(setting, circuit) !== null) continue;
    return {
      sentence: `Wider: ${miles(spacingM)} NM from the centreline brings it down on ${degrees(circuit.approachRad)} degrees, the final turn complete at ${feet(circuit.layout.final.from.heightM)} ft.`,
      options: out,
    };
  }
  return {
    sentence: `Wider: no circuit up to ${miles(WIDEST_M)} NM wide comes down on ${degrees(approachRad)} degrees.`,
    options: null,
  };
}

function steeper(setting: Setting, chosen: Chosen, options: PlanOptions): WayOut {
  const { final } = chosen.layout;
  const { runway, eyeHeightM } = setting;
  const wantedM = finalTurnDoneM(setting) ?? 0;
  const heightM = Math.max(final.from.heightM, wantedM);
  const toAimM = runway.aimM - final.from.xM;
  const rad = atan((heightM + eyeHeightM) / toAimM);
  const groundspeed = final.crab.groundspeedMps;
  const sink = feetAMinute((groundspeed * (heightM + eyeHeightM)) / toAimM);
  const lights = runway.lights === null ? '' : ', and leave the lights aside';
  const out = { ...options, approachRad: rad };
  return {
    sentence: `Steeper: fly ${degrees(rad)} degrees from ${feet(heightM)} ft by the aim point${lights}, ${sink} ft/min at ${fixed(ktFromMps(groundspeed))} kt over the ground.`,
    options: tryOut(setting, out) === null ? null : out,
  };
}

function lower(setting: Setting, chosen: Chosen, options: PlanOptions): WayOut {
  const approachRad = goalRad(setting, chosen);
  const out: PlanOptions = { ...options, descentFrom: 'abeam', approachRad };
  const circuit = tryOut(setting, out);
  if (circuit === null)
    return { sentence: 'Lower: this circuit has no room for an earlier descent.', options: null };
  const from = chosen.descentFrom === 'abeam' ? 'already from abeam' : 'from abeam';
  const rate = feetAMinute(circuit.layout.descentMps);
  const done = feet(circuit.layout.final.from.heightM);
  const sentence =
    circuit.approachRad <= approachRad + SAME_ANGLE_RAD
      ? `Lower: come down ${from} the threshold at ${rate} ft/min and complete the final turn at ${done} ft, on ${degrees(circuit.approachRad)} degrees.`
      : `Lower: even ${from} the threshold at ${rate} ft/min the final turn is complete at ${done} ft and the final is ${degrees(circuit.approachRad)} degrees.`;
  return { sentence, options: out };
}

function longer(setting: Setting, chosen: Chosen, options: PlanOptions): WayOut {
  const approachRad = goalRad(setting, chosen);
  const heightM = Math.max(finalTurnDoneM(setting) ?? 0, FINAL_TURN_DONE_M);
  const finalFromAimM = distanceOnSlopeM(heightM, approachRad);
  const out = { ...options, approachRad, finalFromAimM };
  const circuit = tryOut(setting, out);
  const reachM = glideReachM(setting, heightM);
  const price =
    reachM >= finalFromAimM
      ? 'an engine failing there still reaches the aim point'
      : `an engine failing there reaches ${fixed(nmiFromM(reachM), 1)} of the ${miles(finalFromAimM)} NM`;
  const fits = circuit !== null && circuit.approachRad <= approachRad + SAME_ANGLE_RAD;
  const rate = fits ? `, ${feetAMinute(circuit.layout.descentMps)} ft/min on base,` : '';
  return {
    sentence: `Longer: complete the final turn at ${feet(heightM)} ft, ${miles(finalFromAimM)} NM from the aim point${rate} on ${degrees(approachRad)} degrees; ${price}.`,
    options: fits ? out : null,
  };
}

/** Ground covered gliding wings level from a height against the wind on final. */
export function glideReachM(setting: Setting, heightM: number): number {
  const { tasMps, sinkMps } = setting.glide;
  const along =
    Math.sqrt(Math.max(0, tasMps * tasMps - sinkMps * sinkMps)) + setting.windAt(heightM / 2).xMps;
  return Math.max(0, (heightM * along) / sinkMps);
}
