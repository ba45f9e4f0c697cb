import { sinCosInPlace } from '../../maths/functions.ts';
import { part } from '../places.ts';

/** Where pitch stands among the integrated numbers; bank and heading follow it. */
const PITCH = 6; // definition: a place
const ANGLES = 3; // definition: a count
/** Up to this turn the short series below are exact to the last bit (next terms: 1e-17). */
const NEAR_RAD = 0.04; // derived: from the next terms

/** Sine and cosine of pitch, bank and heading where the step began, and the three angles. */
const start = new Float64Array(2 * ANGLES);
const startRad = new Float64Array(ANGLES);

/**
 * Lays sine and cosine of pitch, bank and heading into the first six of `part`. A step begins here. An angle that
 * has just been asked for is not worked out again: a step begins where `observe` has looked. (A nought always is,
 * for the sake of its sign.)
 */
export const attitude = (y: Float64Array): void => {
  for (let i = 0; i < ANGLES; i += 1) {
    const angle = y[PITCH + i]!;
    if (startRad[i] !== angle || angle === 0) {
      startRad[i] = angle;
      start[2 * i] = angle;
      sinCosInPlace(start, 2 * i);
    }
    part[2 * i] = start[2 * i]!;
    part[2 * i + 1] = start[2 * i + 1]!;
  }
};

/**
 * The same for a later stage of the step that began at the last `attitude`: the start turned by the little that
 * each angle has changed since, which is a third of the work.
 */
export const attitudeSince = (y: Float64Array): void => {
  for (let i = 0; i < ANGLES; i += 1) {
    const angle = y[PITCH + i]!;
    const turned = angle - startRad[i]!;
    if (turned > NEAR_RAD || turned < -NEAR_RAD) {
      part[2 * i] = angle;
      sinCosInPlace(part, 2 * i);
      continue;
    }
    const z = turned * turned;
    const s = turned * (1 - z * (1 / 6 - z * (1 / 120 - z * (1 / 5040))));
    const c = 1 - z * (1 / 2 - z * (1 / 24 - z * (1 / 720 - z * (1 / 40320))));
    const sine = start[2 * i]!;
    const cosine = start[2 * i + 1]!;
    part[2 * i] = sine * c + cosine * s;
    part[2 * i + 1] = cosine * c - sine * s;
  }
};
