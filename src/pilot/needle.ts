import { flapEffect, newFlapEffect } from '../simulation/shape.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { HALF_DENSITY_KGPM3 } from './briefing/density.ts';
import type { PilotMemory } from './memory.ts';
import { TICK_S } from './tick.ts';
import type { PilotView } from './view.ts';

/**
 * Whether the airspeed needle is to be believed. The nose above the flight path is the angle of attack, and that
 * with flap and the load that is felt is the speed that carries it: what pilots call flying by attitude. In rough air that is
 * a poor measure, but there a needle that lives trembles. One that does not tremble and disagrees is left alone, the
 * sooner the more it disagrees.
 */
const DISAGREES_MPS = mpsFromKt(8); // tuned
const FOR_S = 10; // tuned
const AVERAGED_S = 2; // tuned
/** Trembling is how much the needle's movement changes from look to look. */
const ALIVE_MPS = 0.04; // tuned
const TREMBLING_S = 5; // tuned
/** Flown by, the attitude is watched more closely, with a few knots in hand (common practice). */
const FLOWN_BY_S = 1;
const IN_HAND_MPS = mpsFromKt(3); // tuned
const LOWEST_M = mFromFt(50); // tuned
const SLOWEST_MPS = 15; // tuned
const LEAST_LIFT = 0.15; // tuned
const LEAST_LOAD = 0.2; // tuned

const flap = newFlapEffect();

/** Speed that carries the load at the attitude and path that are seen. */
const byAttitudeMps = (b: Briefing, v: Readonly<PilotView>, nearMps: number): number => {
  const { shape } = b;
  const alpha = v.pitchRad - v.verticalSpeedMps / Math.max(nearMps, SLOWEST_MPS);
  const lift = shape.cl0 + flapEffect(shape, v.flapDeg, flap).lift + shape.clAlpha * alpha;
  const carried = shape.weightN * Math.max(v.loadFactor, LEAST_LOAD);
  return Math.sqrt(carried / (HALF_DENSITY_KGPM3 * shape.areaM2 * Math.max(lift, LEAST_LIFT)));
};

/** What is seen of the needle itself. */
const watchNeedle = (m: PilotMemory, iasMps: number): void => {
  const moved = iasMps - m.needleSeenMps;
  const trembled = Math.abs(moved - m.needleMovedMps);
  m.needleTremblesMps += (trembled - m.needleTremblesMps) * (TICK_S / TREMBLING_S);
  m.needleMovedMps = moved;
  m.needleSeenMps = iasMps;
};

/** The airspeed to fly by: the needle's, or the attitude's once the needle has been found wrong. Call once a look. */
export const believedIasMps = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): number => {
  watchNeedle(m, v.iasMps);
  if (v.onGround) {
    m.needleWrongS = 0;
    m.needleIasMps = v.iasMps;
    m.attitudeIasMps = v.iasMps;
    return v.iasMps;
  }
  const near = m.attitudeIasMps;
  const lagS = m.needleDead ? FLOWN_BY_S : AVERAGED_S;
  m.attitudeIasMps = near + (byAttitudeMps(b, v, near) - near) * (TICK_S / lagS);
  m.needleIasMps += (v.iasMps - m.needleIasMps) * (TICK_S / AVERAGED_S);
  const off = Math.abs(m.needleIasMps - m.attitudeIasMps) / DISAGREES_MPS;
  const wrong = off > 1 && v.clearanceM > LOWEST_M && m.needleTremblesMps < ALIVE_MPS;
  m.needleWrongS = wrong ? m.needleWrongS + off * TICK_S : 0;
  if (m.needleWrongS > FOR_S) m.needleDead = true;
  return m.needleDead ? m.attitudeIasMps - IN_HAND_MPS : v.iasMps;
};
