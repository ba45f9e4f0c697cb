import { wrapPi } from '../../units/angles.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import { type LegName, type TurnOnto, turnOnto } from '../names.ts';
import { straightLegFrom } from './classify.ts';
import { LOOK_S } from './look-interval.ts';
import type { Where } from './where.ts';

/**
 * Which leg is being flown, from position, track, height and history; never from what was planned.
 * Turning is a state between legs: it begins where the wings were last level before the track went off, and
 * ends where they come level again. Every change needs its condition to last, so that gusts make no flicker.
 * The figures here are common practice, chosen so that light turbulence and a student's corrections stay inside.
 */
export interface LegMemory {
  leg: LegName;
  /** When it really began, which can be before it was recognised. */
  fromS: number;
  /** When it was recognised. */
  seenS: number;
  /** Counted from 1; a touch-and-go and a go-around begin the next. */
  circuit: number;
  /** -1 while the circuit is flown to the other side than planned. */
  mirror: 1 | -1;
  /** Bank and rate of turn over the ground, smoothed: rough air rocks the wings, it does not turn the track. */
  smoothBankRad: number;
  turnRateRadps: number;
  lastTrackRad: number;
  /** The last moment with the wings level, and where the track pointed and the aeroplane was. */
  levelS: number;
  levelTrackRad: number;
  levelAlongM: number;
  levelOutM: number;
  levelHeightM: number;
  /** Since when a condition has held without a break; null while it does not. */
  rolledOutS: number | null;
  climbingS: number | null;
  /** Height where that climb began. */
  climbingFromM: number;
  sinkingS: number | null;
  astrayS: number | null;
  awayS: number | null;
  airborneS: number | null;
  groundS: number | null;
  poweredS: number | null;
  stillS: number | null;
  /** Highest above the ground since the last take-off or start. */
  highestClearM: number;
  /** The wheels have carried the aeroplane after a flight. */
  landed: boolean;
}

/** Where the circuit's own airspace ends: along and out from the runway, and up. */
export interface CircuitBounds {
  readonly alongLowM: number;
  readonly alongHighM: number;
  readonly outLowM: number;
  readonly outHighM: number;
  readonly highM: number;
  readonly runwayLengthM: number;
  readonly runwayEndM: number;
  /** Circuit height above the threshold. */
  readonly circuitM: number;
}

const WINGS_LEVEL_RAD = radFromDeg(4); // our choice: tells one leg from the next
const TURNING_BANK_RAD = radFromDeg(7); // our choice: tells one leg from the next
const STRAIGHT_RADPS = radFromDeg(0.7); // our choice: tells one leg from the next
const ROLLED_OUT_RADPS = radFromDeg(1.2); // our choice: tells one leg from the next
const BANK_LAG_S = 0.5; // our choice: what smooths a wobble
const TURN_LAG_S = 1.5; // our choice: what smooths a wobble
const TURNED_RAD = radFromDeg(12); // our choice: tells one leg from the next
const FINAL_TURNED_RAD = radFromDeg(40); // our choice: tells one leg from the next
const ROLL_OUT_RAD = radFromDeg(45); // our choice: tells one leg from the next
const PASSED_RAD = radFromDeg(50); // our choice: tells one leg from the next
const ASTRAY_RAD = radFromDeg(60); // our choice: tells one leg from the next
const HOLD_OFF_M = mFromFt(15); // our choice: tells one leg from the next
const BALLOON_M = mFromFt(40); // our choice: tells one leg from the next
const HOP_M = mFromFt(5); // our choice: tells one leg from the next
const ROLLING_MPS = mpsFromKt(5); // our choice: tells one leg from the next
const RUN_POWER = 0.6; // our choice: more than taxiing
const CLIMB_POWER = 0.85; // our choice: a little under FULL_POWER
/** A go-around leads along the runway; begun across it, on base, it has to climb for longer to be one. */
const ACROSS_CLIMB_S = 5; // our choice: tells one leg from the next
const ALONG_RUNWAY_RAD = radFromDeg(60); // our choice: tells one leg from the next
const CLIMB_MPS = 0.5; // our choice: tells one leg from the next
/** A clumsy handful of power that is taken off again is none: it climbs away, or it lasts. */
const CLIMBED_AWAY_M = mFromFt(25); // our choice: tells one leg from the next
const CLIMB_LASTS_S = 6; // our choice: tells one leg from the next

/** Track of each straight leg from the landing direction, turning towards the circuit side (definition: square legs). */
const NOMINAL_RAD: Partial<Record<LegName, number>> = {
  upwind: 0,
  'go-around': 0,
  crosswind: radFromDeg(90),
  downwind: radFromDeg(180),
  base: radFromDeg(-90),
  final: 0,
};

const NEXT: Partial<Record<LegName, TurnOnto>> = {
  upwind: 'crosswind',
  'go-around': 'crosswind',
  crosswind: 'downwind',
  downwind: 'base',
  base: 'final',
  final: 'crosswind',
};

/** Legs in which adding power and climbing is a go-around. */
const LANDING_LEGS: ReadonlySet<LegName> = new Set([
  'base',
  'turn-to-final',
  'final',
  'hold-off',
  'landing-roll',
]);

export const beginLegs = (w: Readonly<Where>, bounds: CircuitBounds): LegMemory => ({
  leg: w.onGround ? 'line-up' : straightLegFrom(w, bounds.runwayLengthM),
  fromS: w.timeS,
  seenS: w.timeS,
  circuit: 1,
  mirror: !w.onGround && w.outM < -bounds.outHighM / 4 ? -1 : 1,
  smoothBankRad: w.bankRad,
  turnRateRadps: 0,
  lastTrackRad: w.trackRad,
  levelS: w.timeS,
  levelTrackRad: w.trackRad,
  levelAlongM: w.alongM,
  levelOutM: w.outM,
  levelHeightM: w.heightM,
  rolledOutS: null,
  climbingS: null,
  climbingFromM: w.heightM,
  sinkingS: null,
  astrayS: null,
  awayS: null,
  airborneS: null,
  groundS: null,
  poweredS: null,
  stillS: null,
  // A start in the air has been higher before
  highestClearM: w.onGround ? 0 : Math.max(BALLOON_M, w.clearM),
  landed: false,
});

const since = (holds: boolean, was: number | null, nowS: number): number | null =>
  holds ? (was ?? nowS) : null;
const lasted = (from: number | null, seconds: number, nowS: number): boolean =>
  from !== null && nowS - from >= seconds - 1e-9;

const become = (m: LegMemory, leg: LegName, fromS: number, nowS: number): boolean => {
  m.leg = leg;
  m.fromS = fromS;
  m.seenS = nowS;
  m.rolledOutS = null;
  m.astrayS = null;
  return true;
};

/** Takes one look, ten times a second; true when the leg has just changed. `asked`: a go-around is due, and any climb answers. */
export const watchLegs = (
  m: LegMemory,
  w: Readonly<Where>,
  bounds: CircuitBounds,
  asked = false,
): boolean => {
  const now = w.timeS;
  m.airborneS = since(!w.onGround, m.airborneS, now);
  m.groundS = since(w.onGround, m.groundS, now);
  m.stillS = since(w.parked || w.groundspeedMps < 0.6, m.stillS, now);
  m.poweredS = since(w.throttle >= RUN_POWER, m.poweredS, now);
  const climbing = w.throttle >= CLIMB_POWER && w.verticalSpeedMps > CLIMB_MPS && !w.onGround;
  if (m.climbingS === null) m.climbingFromM = w.heightM;
  m.climbingS = since(climbing, m.climbingS, now);
  m.highestClearM = Math.max(m.highestClearM, w.clearM);
  smooth(m, w);
  const changed = w.onGround || m.leg === 'landing-roll' ? onWheels(m, w) : inTheAir(m, w, bounds, asked);
  if (Math.abs(m.smoothBankRad) < WINGS_LEVEL_RAD || Math.abs(m.turnRateRadps) < STRAIGHT_RADPS) {
    m.levelS = now;
    m.levelTrackRad = w.trackRad;
    m.levelAlongM = w.alongM;
    m.levelOutM = w.outM;
    m.levelHeightM = w.heightM;
  }
  return changed;
};

const smooth = (m: LegMemory, w: Readonly<Where>): void => {
  const turnedRadps = wrapPi(w.trackRad - m.lastTrackRad) / LOOK_S;
  m.lastTrackRad = w.trackRad;
  m.turnRateRadps += (turnedRadps - m.turnRateRadps) * (LOOK_S / TURN_LAG_S);
  m.smoothBankRad += (w.bankRad - m.smoothBankRad) * (LOOK_S / BANK_LAG_S);
};

const onWheels = (m: LegMemory, w: Readonly<Where>): boolean => {
  const now = w.timeS;
  const run = m.leg === 'take-off-roll' || m.leg === 'line-up';
  if (!w.onGround) {
    // Only from the landing roll: a hop keeps its name, a real bounce is the hold-off again.
    if (lasted(m.climbingS, 1, now) && w.clearM > HOP_M) return goAround(m, m.climbingS ?? now, now);
    if (w.clearM > HOP_M || lasted(m.airborneS, 3, now))
      return become(m, 'hold-off', m.airborneS ?? now, now);
    return false;
  }
  if (m.leg === 'line-up') {
    return w.groundspeedMps > ROLLING_MPS && become(m, 'take-off-roll', now, now);
  }
  if (run || m.leg === 'landing-roll') {
    const stillLongEnough = lasted(m.stillS, 1, now);
    if (stillLongEnough) return become(m, 'stopped', m.stillS ?? now, now);
    const runsAgain =
      m.leg === 'landing-roll' && w.onRunway && lasted(m.poweredS, 1, now) && lasted(m.groundS, 1, now);
    if (!runsAgain) return false;
    m.circuit += 1;
    m.highestClearM = 0;
    m.landed = false;
    m.mirror = 1;
    return become(m, 'take-off-roll', m.poweredS ?? now, now);
  }
  if (m.leg === 'stopped') return w.groundspeedMps > ROLLING_MPS && become(m, 'take-off-roll', now, now);
  // Out of the air onto the ground.
  if (m.leg === 'upwind' && m.highestClearM < HOLD_OFF_M) return become(m, 'take-off-roll', now, now);
  m.landed = true;
  return become(m, 'landing-roll', m.groundS ?? now, now);
};

const climbsAway = (m: LegMemory, w: Readonly<Where>): boolean =>
  w.heightM - m.climbingFromM > CLIMBED_AWAY_M || lasted(m.climbingS, CLIMB_LASTS_S, w.timeS);

const goAround = (m: LegMemory, fromS: number, now: number): boolean => {
  m.landed = false;
  return become(m, 'go-around', fromS, now);
};

const inTheAir = (m: LegMemory, w: Readonly<Where>, bounds: CircuitBounds, asked: boolean): boolean => {
  const now = w.timeS;
  if (m.leg === 'line-up' || m.leg === 'take-off-roll' || m.leg === 'stopped') {
    // A hop on the way is still the run.
    const flies = (lasted(m.airborneS, 0.5, now) && w.clearM > HOP_M) || lasted(m.airborneS, 3, now);
    return flies && become(m, 'upwind', m.airborneS ?? now, now);
  }
  m.awayS = since(isAway(w, bounds), m.awayS, now);
  if (m.leg === 'left-the-circuit') {
    return !isAway(w, bounds) && become(m, straightLegFrom(w, bounds.runwayLengthM), now, now);
  }
  if (lasted(m.awayS, 5, now)) return become(m, 'left-the-circuit', m.awayS ?? now, now);
  if (LANDING_LEGS.has(m.leg)) {
    const along = Math.abs(w.trackRad) < ALONG_RUNWAY_RAD;
    const given = along ? 2 : ACROSS_CLIMB_S;
    if (lasted(m.climbingS, given, now) && (asked || climbsAway(m, w)))
      return goAround(m, m.climbingS ?? now, now);
    if (w.alongM > bounds.runwayEndM && (m.leg === 'final' || m.leg === 'hold-off'))
      return goAround(m, now, now);
  }
  if (m.leg === 'hold-off') return w.clearM > BALLOON_M && become(m, 'final', now, now);
  if (m.leg === 'final' && w.clearM < HOLD_OFF_M) return become(m, 'hold-off', now, now);
  return turnOnto(m.leg) === null ? onStraightLeg(m, w, bounds) : inTurn(m, w, bounds);
};

const isAway = (w: Readonly<Where>, b: CircuitBounds): boolean =>
  w.alongM < b.alongLowM ||
  w.alongM > b.alongHighM ||
  w.outM < b.outLowM ||
  w.outM > b.outHighM ||
  w.heightM > b.highM;

const onStraightLeg = (m: LegMemory, w: Readonly<Where>, bounds: CircuitBounds): boolean => {
  const now = w.timeS;
  const leavesRunway = m.leg === 'upwind' || m.leg === 'go-around';
  const turned = wrapPi(w.trackRad - m.levelTrackRad);
  const banked = Math.abs(m.smoothBankRad) > TURNING_BANK_RAD && m.smoothBankRad * turned > 0;
  const enough = m.leg === 'final' ? FINAL_TURNED_RAD : TURNED_RAD;
  // Begun on base, a go-around first turns onto the runway's line: that is no turn to crosswind
  const across = m.leg === 'go-around' && Math.abs(wrapPi(m.levelTrackRad)) > ALONG_RUNWAY_RAD;
  if (banked && !across && Math.abs(turned) > enough && now - m.seenS >= 1) {
    if (leavesRunway) m.mirror = turned > 0 ? 1 : -1;
    if (turned * m.mirror > 0) {
      if (m.leg === 'go-around' || m.leg === 'final') m.circuit += 1;
      return become(m, `turn-to-${NEXT[m.leg] ?? 'crosswind'}`, m.levelS, now);
    }
  }
  const landsAfterAll = w.verticalSpeedMps < -1 && w.alongM < 0 && w.clearM < 0.7 * bounds.circuitM;
  m.sinkingS = since(m.leg === 'go-around' && landsAfterAll, m.sinkingS, now);
  if (lasted(m.sinkingS, 5, now)) return become(m, 'final', m.sinkingS ?? now, now);
  const off = wrapPi(w.trackRad * m.mirror - (NOMINAL_RAD[m.leg] ?? 0));
  // A turn away from the runway on downwind is an orbit: it comes back to the leg
  const orbiting = m.leg === 'downwind' && m.smoothBankRad * m.mirror < -TURNING_BANK_RAD;
  const goesAround = m.leg === 'go-around' && m.climbingS !== null;
  m.astrayS = since(Math.abs(off) > ASTRAY_RAD && !orbiting && !goesAround, m.astrayS, now);
  if (!lasted(m.astrayS, 3, now)) return false;
  const looksLike = straightLegFrom(w, bounds.runwayLengthM);
  if (looksLike === m.leg) return false;
  if (m.leg === 'go-around') m.circuit += 1;
  return become(m, looksLike, m.astrayS ?? now, now);
};

const inTurn = (m: LegMemory, w: Readonly<Where>, bounds: CircuitBounds): boolean => {
  const now = w.timeS;
  const onto = turnOnto(m.leg) as TurnOnto;
  const nominal = NOMINAL_RAD[onto] ?? 0;
  const passed = wrapPi(w.trackRad * m.mirror - nominal);
  const straight =
    Math.abs(m.smoothBankRad) < TURNING_BANK_RAD || Math.abs(m.turnRateRadps) < ROLLED_OUT_RADPS;
  m.rolledOutS = since(straight, m.rolledOutS, now);
  if (lasted(m.rolledOutS, 1, now)) {
    const leg = Math.abs(passed) <= ROLL_OUT_RAD ? onto : straightLegFrom(w, bounds.runwayLengthM);
    return become(m, leg, m.rolledOutS ?? now, now);
  }
  // One long turn through two corners: the name moves on when the first leg's direction lies behind.
  const behind = passed > PASSED_RAD && passed < PASSED_RAD + ROLL_OUT_RAD;
  if (behind && onto === 'crosswind') return become(m, 'turn-to-downwind', now, now);
  if (behind && onto === 'base' && w.alongM < 0) return become(m, 'turn-to-final', now, now);
  return false;
};
