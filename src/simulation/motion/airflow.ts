import { atan2, atanInPlace } from '../../maths/functions.ts';
import { NOW, PART, part, SEEN } from '../places.ts';
import type { Shape } from '../shape.ts';
import { AT } from '../state.ts';

const FADE_MPS2 = 9; // alpha and slip fade below 3 m/s (our choice: no air to speak of)

/** Body axes and the air that meets them: air velocity in them, angle of attack, slip, the ground below. */
export const airflow = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const st = part[PART.sinPitch]!;
  const ct = part[PART.cosPitch]!;
  const sb = part[PART.sinBank]!;
  const cb = part[PART.cosBank]!;
  const sh = part[PART.sinHeading]!;
  const ch = part[PART.cosHeading]!;
  const fE = sh * ct;
  const fN = ch * ct;
  const rE = ch * cb + sh * st * sb;
  const rN = -sh * cb + ch * st * sb;
  const rU = -ct * sb;
  const uE = ch * sb - sh * st * cb;
  const uN = -sh * sb - ch * st * cb;
  const uU = ct * cb;
  part[PART.forwardEast] = fE;
  part[PART.forwardNorth] = fN;
  part[PART.rightEast] = rE;
  part[PART.rightNorth] = rN;
  part[PART.rightUp] = rU;
  part[PART.upEast] = uE;
  part[PART.upNorth] = uN;
  part[PART.upUp] = uU;

  const aE = y[AT.velocityEast]! - now[NOW.windEast]!;
  const aN = y[AT.velocityNorth]! - now[NOW.windNorth]!;
  const aU = y[AT.velocityUp]! - now[NOW.windUp]!;
  const u = aE * fE + aN * fN + aU * st;
  const v = aE * rE + aN * rN + aU * rU;
  const w = -(aE * uE + aN * uN + aU * uU);
  const v2 = u * u + v * v + w * w;
  const fade = v2 < FADE_MPS2 ? v2 / FADE_MPS2 : 1;
  const across = Math.sqrt(u * u + w * w);
  part[PART.u] = u;
  part[PART.v] = v;
  part[PART.w] = w;
  const perAcross = across > 1e-9 ? 1 / across : 0;
  part[PART.sinAlpha] = w * perAcross;
  part[PART.cosAlpha] = across > 1e-9 ? u * perAcross : 1;
  part[PART.fade] = fade;
  const q = 0.5 * now[NOW.density]! * v2;
  part[PART.qS] = q * s.areaM2;
  if (u > 0.5) {
    seen[SEEN.alpha] = w / u;
    atanInPlace(seen, SEEN.alpha);
  } else seen[SEEN.alpha] = atan2(w, u);
  if (across > 0.5) {
    seen[SEEN.slip] = v * perAcross;
    atanInPlace(seen, SEEN.slip);
  } else seen[SEEN.slip] = atan2(v, across);
  seen[SEEN.alpha] = fade * seen[SEEN.alpha]!;
  seen[SEEN.slip] = fade * seen[SEEN.slip]!;
  seen[SEEN.airspeed] = Math.sqrt(v2);
  seen[SEEN.dynamicPressure] = q;

  const along = y[AT.east]! * now[NOW.sinRunway]! + y[AT.north]! * now[NOW.cosRunway]!;
  const from = now[NOW.slopeFrom]!;
  const to = now[NOW.slopeTo]!;
  part[PART.slopeHere] = along > from && along < to ? now[NOW.slope]! : 0;
  seen[SEEN.groundUp] = now[NOW.slope]! * (along < from ? from : along > to ? to : along);
};
