import { newSeenLights, seeLights } from '../../aerodrome/slope-lights.ts';
import { degFromRad, ftFromM, nmiFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import { lettersInWords } from '../conflict.ts';
import type { Setting } from '../setting.ts';
import type { CircuitPlan, PathPoint } from '../types.ts';
import type { LightsBrief } from './types.ts';

const PLACES: Readonly<Record<string, string>> = {
  'base turn': 'in the base turn',
  base: 'on base',
  'final turn': 'in the turn to final',
  final: 'on final',
};

/** The first point of the way down from which the eye is inside the beam. */
function firstSeen(setting: Setting, plan: CircuitPlan): PathPoint | null {
  const seen = newSeenLights();
  for (const point of plan.path) {
    if (point.leg !== 'base' && point.leg !== 'final') continue;
    if (seeLights(plan.runway, point.eastM, point.northM, point.heightM + setting.eyeHeightM, seen).inBeam)
      return point;
  }
  return null;
}

/** Where the lights stand, from where they are seen, and what the planned final shows. */
export function lightsBrief(setting: Setting, plan: CircuitPlan): LightsBrief | null {
  const { lights } = plan.runway;
  if (lights === null || plan.lightsOnFinal === null) return null;
  const angle = String(Math.round(degFromRad(lights.angleRad) * 100) / 100);
  const first = firstSeen(setting, plan);
  const place = first === null ? null : PLACES[`${first.leg}${first.turning ? ' turn' : ''}`];
  const begins =
    first === null
      ? 'On this circuit they are not seen.'
      : `They come into view ${place}, at ${thousandsTo(ftFromM(first.heightM), 10)} ft.`;
  return {
    title: `${lights.kind} ${angle}°, ${lights.side === 1 ? 'right' : 'left'} of the runway`,
    where: `${fixed(lights.alongM)} m past the threshold, seen within ${fixed(degFromRad(lights.sectorRad))}° of the centreline and ${fixed(nmiFromM(lights.rangeM), 1)} NM by day. ${begins}`,
    shown: plan.lightsOnFinal.map((stretch) => ({
      ...stretch,
      words: stretch.letters.includes('-') ? 'outside the beam' : lettersInWords(stretch.letters),
    })),
  };
}
