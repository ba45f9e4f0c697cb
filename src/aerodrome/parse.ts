import * as v from 'valibot';
import { wrapPi } from '../units/angles.ts';
import { radFromDeg } from '../units/conversions.ts';
import { describeIssue } from '../units/issues.ts';
import { type Aerodrome, aerodromeSchema } from './schema.ts';

/** A hundredth of a degree: rounding in a file, no more. */
const RECIPROCAL_WITHIN_RAD = radFromDeg(0.01);

/** What a well-formed file can still get wrong: first sentence that fails, or null. */
const contradiction = (a: Aerodrome): string | null => {
  const [first, second] = a.runway.ends;
  if (first.designator === second.designator)
    return `runway.ends[1].designator must differ from the first end's, was "${second.designator}"`;
  const off = wrapPi(radFromDeg(second.headingDegM - first.headingDegM - 180));
  if (Math.abs(off) > RECIPROCAL_WITHIN_RAD)
    return `runway.ends[1].headingDegM must be the reciprocal of ${first.headingDegM}, was ${second.headingDegM}`;
  for (let i = 0; i < 2; i += 1) {
    const end = a.runway.ends[i]!;
    const painted = Number(end.designator.slice(0, 2)) * 10;
    const landingM = a.runway.lengthM - end.displacedThresholdM;
    const touchdownM = end.aimPastThresholdM + end.specifiedPastAimM;
    if (Math.abs(wrapPi(radFromDeg(end.headingDegM - painted))) > radFromDeg(5.001))
      return `runway.ends[${i}].designator must be its heading ${end.headingDegM} to the nearest ten, was "${end.designator}"`;
    if (touchdownM >= landingM)
      return `runway.ends[${i}].aimPastThresholdM must leave the touchdown point on the ${landingM} m that can be landed on, was ${end.aimPastThresholdM}`;
  }
  return null;
};

/**
 * The aerodrome that a file describes.
 * Throws an Error whose message is one sentence: `curlew.json: runway.widthM must be above 0, was -14`.
 */
export function parseAerodrome(json: unknown, file: string): Aerodrome {
  const result = v.safeParse(aerodromeSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  const wrong = contradiction(result.output);
  if (wrong !== null) throw new Error(`${file}: ${wrong}`);
  return result.output;
}
