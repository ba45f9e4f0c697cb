import { airspeed } from './airspeed.ts';
import { altitude } from './altitude.ts';
import { bank, pitch } from './attitude.ts';
import { flap } from './flap.ts';
import { gear } from './gear.ts';
import { heading } from './heading.ts';
import { heldPressure } from './held-pressure.ts';
import { loadFactor } from './load-factor.ts';
import { manifold } from './manifold.ts';
import { centrelineOffset, distanceToThreshold, track } from './place.ts';
import { power } from './power.ts';
import type { Scale } from './scale.ts';
import { slip } from './slip.ts';
import { trim } from './trim.ts';
import { verticalSpeed } from './vertical-speed.ts';

/** Every scale in the order it stands in: ribbons first, then plain meters. */
export const SCALES: readonly Scale[] = [
  airspeed,
  altitude,
  verticalSpeed,
  heading,
  power,
  manifold,
  flap,
  trim,
  heldPressure,
  slip,
  gear,
  loadFactor,
  pitch,
  bank,
  track,
  distanceToThreshold,
  centrelineOffset,
];
