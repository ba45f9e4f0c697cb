import type { Aeroplane } from '../../aeroplane/schema.ts';
import { atan2, cos, sin } from '../../maths/functions.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromNmi, radFromDeg } from '../../units/conversions.ts';

/** A light aeroplane is picked up by eye from about here on (common practice: two nautical miles). */
const SIGHT_M = mFromNmi(2);
/** Behind this there is the own cabin and tail. */
const BEHIND_RAD = radFromDeg(140); // estimate: of a light cabin
/** Out to the sides the wing hides what lies above it, or below it. */
const WING_FROM_RAD = radFromDeg(25); // estimate: of a light cabin
const HIGH_WING_ABOVE_RAD = radFromDeg(8); // estimate: of a light cabin
const LOW_WING_BELOW_RAD = radFromDeg(-10); // estimate: of a light cabin
/** Under the nose. */
const NOSE_BELOW_RAD = radFromDeg(-14); // estimate: of a light cabin

/** Whether another aeroplane could be seen from the own cockpit: near enough, and not hidden by wing, nose or tail. */
export const couldBeSeen = (
  own: Readonly<Snapshot>,
  other: Readonly<{ eastM: number; northM: number; heightM: number }>,
  wing: Aeroplane['wing']['position'],
): boolean => {
  const east = other.eastM - own.eyeEastM;
  const north = other.northM - own.eyeNorthM;
  const up = other.heightM - own.eyeHeightM;
  const flatM = Math.sqrt(east * east + north * north);
  if (flatM > SIGHT_M) return false;
  if (flatM < 1) return true;
  const aside = wrapPi(atan2(east, north) - own.headingRadT);
  if (Math.abs(aside) > BEHIND_RAD) return false;
  // Above the own wings' plane: bank raises one side, pitch the nose
  const above = atan2(up, flatM) + own.bankRad * sin(aside) - own.pitchRad * cos(aside);
  if (Math.abs(aside) < WING_FROM_RAD) return above > NOSE_BELOW_RAD;
  return wing === 'high' ? above < HIGH_WING_ABOVE_RAD : above > LOW_WING_BELOW_RAD;
};
