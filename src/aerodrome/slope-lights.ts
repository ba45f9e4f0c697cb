import { atan2, clamp } from '../maths/functions.ts';
import { radFromDeg } from '../units/conversions.ts';
import { acrossM, alongM, type Runway } from './runway.ts';

/**
 * Precision approach path lights as the pilot's eye sees them. A unit shows white above its set angle and red
 * below; the change takes 3 minutes of arc, centred on the set angle (ICAO Annex 14 vol. I 5.3.5; Doc 9157
 * part 4). The angle is the eye's elevation in the vertical plane through the unit and the eye.
 */
const TRANSITION_RAD = radFromDeg(3 / 60);

/**
 * An eye less than this above the lights, as on the wheels beside them, is not told anything: the units are set
 * for an approach, and from the runway some would still be in the sector and some not. Common practice.
 */
const LOWEST_EYE_M = 2.5;

export type LightLetter = 'W' | 'P' | 'R' | '-';

/** From the unit furthest from the runway to the nearest. Filled again and again; no allocation. */
export interface SeenLights {
  /** 0 where the runway has none. */
  units: number;
  letters: LightLetter[];
  /** White fraction of each, 0 red to 1 white; 0 when dark. */
  white: number[];
  /** Elevation of the eye seen from the middle of the lights, whether inside the beam or not. */
  slopeAngleRad: number;
  /** At least one unit can be seen. */
  inBeam: boolean;
}

export const newSeenLights = (): SeenLights => ({
  units: 0,
  letters: ['-', '-', '-', '-'],
  white: [0, 0, 0, 0],
  slopeAngleRad: 0,
  inBeam: false,
});

/** White fraction at an elevation: 0 below the transition, 1 above, straight between. */
export const whiteFraction = (elevationRad: number, setAngleRad: number): number =>
  clamp((elevationRad - setAngleRad) / TRANSITION_RAD + 0.5, 0, 1);

/** The letter of a visible unit. */
const letterOf = (white: number): LightLetter => (white >= 1 ? 'W' : white <= 0 ? 'R' : 'P');

/**
 * What the eye sees; positions from the landing threshold, earth axes. Dark outside the lateral sector,
 * beyond the range, behind the lights and from no higher than an eye on the wheels.
 */
export function seeLights(
  runway: Runway,
  eyeEastM: number,
  eyeNorthM: number,
  eyeHeightM: number,
  into: SeenLights,
): SeenLights {
  const lights = runway.lights;
  into.inBeam = false;
  if (lights === null) {
    into.units = 0;
    into.slopeAngleRad = 0;
    return into;
  }
  const beforeM = lights.alongM - alongM(runway, eyeEastM, eyeNorthM);
  const eyeAcrossM = acrossM(runway, eyeEastM, eyeNorthM);
  const upM = eyeHeightM - lights.heightM;
  into.units = lights.unitsAcrossM.length;
  const middleAsideM = eyeAcrossM - lights.middleAcrossM;
  into.slopeAngleRad = atan2(upM, Math.sqrt(beforeM * beforeM + middleAsideM * middleAsideM));
  for (let i = 0; i < into.units; i += 1) {
    const asideM = eyeAcrossM - (lights.unitsAcrossM[i] as number);
    const distanceM = Math.sqrt(beforeM * beforeM + asideM * asideM);
    const inSector = beforeM > 0 && Math.abs(atan2(asideM, beforeM)) <= lights.sectorRad;
    if (distanceM > lights.rangeM || !inSector || upM < LOWEST_EYE_M) {
      into.letters[i] = '-';
      into.white[i] = 0;
      continue;
    }
    const white = whiteFraction(atan2(upM, distanceM), lights.unitsAngleRad[i] as number);
    into.white[i] = white;
    into.letters[i] = letterOf(white);
    into.inBeam = true;
  }
  return into;
}

/** The letters as one word, `WWRR`; empty where the runway has none. */
export function lightLetters(seen: SeenLights): string {
  let word = '';
  for (let i = 0; i < seen.units; i += 1) word += seen.letters[i];
  return word;
}
