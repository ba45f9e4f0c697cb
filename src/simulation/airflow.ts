import { atan2, atanInPlace } from '../maths/functions.ts';
import { part } from './places.ts';
import type { Shape } from './shape.ts';

const FADE_MPS2 = 9; // alpha and slip fade below 3 m/s (our choice: no air to speak of)

/** Body axes and the air that meets them: air velocity in them, angle of attack, slip, the ground below. */
export const airflow = (s: Shape, now: Float64Array, y: Float64Array, seen: Float64Array): void => {
  const st = part[0]!;
  const ct = part[1]!;
  const sb = part[2]!;
  const cb = part[3]!;
  const sh = part[4]!;
  const ch = part[5]!;
  const fE = sh * ct;
  const fN = ch * ct;
  const rE = ch * cb + sh * st * sb;
  const rN = -sh * cb + ch * st * sb;
  const rU = -ct * sb;
  const uE = ch * sb - sh * st * cb;
  const uN = -sh * sb - ch * st * cb;
  const uU = ct * cb;
  part[6] = fE;
  part[7] = fN;
  part[8] = rE;
  part[9] = rN;
  part[10] = rU;
  part[11] = uE;
  part[12] = uN;
  part[13] = uU;

  const aE = y[3]! - now[0]!;
  const aN = y[4]! - now[1]!;
  const aU = y[5]! - now[2]!;
  const u = aE * fE + aN * fN + aU * st;
  const v = aE * rE + aN * rN + aU * rU;
  const w = -(aE * uE + aN * uN + aU * uU);
  const v2 = u * u + v * v + w * w;
  const fade = v2 < FADE_MPS2 ? v2 / FADE_MPS2 : 1;
  const across = Math.sqrt(u * u + w * w);
  part[14] = u;
  part[15] = v;
  part[16] = w;
  const perAcross = across > 1e-9 ? 1 / across : 0;
  part[17] = w * perAcross;
  part[18] = across > 1e-9 ? u * perAcross : 1;
  part[19] = fade;
  const q = 0.5 * now[3]! * v2;
  part[20] = q * s.areaM2;
  if (u > 0.5) {
    seen[0] = w / u;
    atanInPlace(seen, 0);
  } else seen[0] = atan2(w, u);
  if (across > 0.5) {
    seen[1] = v * perAcross;
    atanInPlace(seen, 1);
  } else seen[1] = atan2(v, across);
  seen[0] = fade * seen[0]!;
  seen[1] = fade * seen[1]!;
  seen[2] = Math.sqrt(v2);
  seen[3] = q;

  const along = y[0]! * now[21]! + y[1]! * now[22]!;
  const from = now[24]!;
  const to = now[25]!;
  part[21] = along > from && along < to ? now[23]! : 0;
  seen[11] = now[23]! * (along < from ? from : along > to ? to : along);
};
