import { atan, clamp, sin } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import type { PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';
import { holdBank } from './attitude.ts';

/** Bank for closing on a line: twice the damped rate of a gentle S; the wind is answered by what it does. */
const CLOSING_PER_S = 0.13; // tuned
const TURNING_PER_S = 0.55; // tuned
const SHARPEST_CUT = 0.6; // tuned
const LINE_BANK_RAD = radFromDeg(20); // common practice: no more for a correction

/**
 * Holds a line over the ground, by drift. `offM` is how far the aeroplane stands off the line, + on the side to
 * which angles count; `alongRad` the line's direction.
 */
export const holdLine = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  offM: number,
  alongRad: number,
  mostBankRad = LINE_BANK_RAD,
): void => {
  const cut = SHARPEST_CUT * v.groundspeedMps;
  const closing = clamp(-CLOSING_PER_S * offM, -cut, cut);
  const astray = wrapPi(v.trackRad - alongRad);
  // Beyond a quarter turn off, the way back is a plain turn
  const drifting = v.groundspeedMps * (Math.abs(astray) < Math.PI / 2 ? sin(astray) : Math.sign(astray));
  const bank = atan((TURNING_PER_S * (closing - drifting)) / G0_MPS2);
  holdBank(b, m, v, clamp(bank, -mostBankRad, mostBankRad));
};

const TRACK_PER_S = 0.3; // tuned

/** Holds a direction over the ground, wherever the line lies. */
export const holdTrack = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>, trackRad: number): void => {
  const off = wrapPi(trackRad - v.trackRad);
  const bank = atan((TRACK_PER_S * off * v.groundspeedMps) / G0_MPS2);
  holdBank(b, m, v, clamp(bank, -LINE_BANK_RAD, LINE_BANK_RAD));
};

const ROLL_OUT_RADPS = radFromDeg(10); // tuned
/** Thirty degrees are the most in a circuit; a degree and a half is kept for the hand. */
const STEEPEST_TURN_RAD = radFromDeg(28.5); // derived: the 30 deg of a circuit less 1.5
const SLOWNESS_S = 0.5; // tuned

/** Turns at `bankRad` towards a track, always with the circuit; true once it is time to roll out. */
export const turnTo = (
  b: Briefing,
  m: PilotMemory,
  v: Readonly<PilotView>,
  trackRad: number,
  bankRad: number,
): boolean => {
  const left = wrapPi(trackRad - v.trackRad);
  const rate = (G0_MPS2 * Math.max(0.05, v.bankRad)) / Math.max(v.groundspeedMps, 15);
  const lead = rate * (0.5 * (Math.max(0, v.bankRad) / ROLL_OUT_RADPS) + SLOWNESS_S);
  if (left < lead && left > -Math.PI / 2) return true;
  holdBank(b, m, v, Math.min(bankRad, STEEPEST_TURN_RAD));
  return false;
};
