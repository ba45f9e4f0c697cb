/** Wind along and across a direction: W cos and W sin of the angle between. */
import { cos, sin } from '../maths/functions.ts';

/** Wind against a heading; negative is a tailwind. */
export const headwindMps = (fromRad: number, speedMps: number, headingRad: number): number =>
  speedMps * cos(fromRad - headingRad);

/** Wind across a heading, positive from the right. */
export const crosswindMps = (fromRad: number, speedMps: number, headingRad: number): number =>
  speedMps * sin(fromRad - headingRad);
