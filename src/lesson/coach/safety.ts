import { MOST_SINK_MPS } from '../../circuit/stabilised.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import {
  degFromRad,
  fpmFromMps,
  ftFromM,
  ktFromMps,
  mFromFt,
  mpsFromFpm,
  radFromDeg,
} from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import type { LegName } from '../names.ts';
import { FULL_POWER } from '../watch/full-power.ts';
import type { CoachContext } from './context.ts';

/**
 * The safety layer: situations that hurt people, each with the one thing that saves. The first of the table that holds
 * outranks everything: while it stands nothing else is said (no call, check, trim, technique), it is said within half a
 * second of its time, stays until it is cured, and only then what was wrong is told. Nothing here points at the ground,
 * takes power away, or asks for the nose up when slow; `asks.ts` and tests/stories/safe-words hold that.
 */
export interface Danger {
  readonly id: string;
  /** It must have been so for this long: one gust is none. */
  readonly lastsS: number;
  readonly holds: (c: CoachContext) => boolean;
  /** Over again; where it is not stated, when it no longer holds. */
  readonly cured?: (c: CoachContext) => boolean;
  /** The one thing that saves. */
  readonly say: (c: CoachContext) => string;
  /** Afterwards, with the number of the moment it began; empty where nothing is to be added. */
  readonly was: (c: CoachContext) => string;
  readonly source: string;
}

const LOW_M = mFromFt(20); // common practice: lower than this it is the hold-off
const HIGH_M = mFromFt(500); // the safety stops' own height (watch/safety.ts): common practice
const SCREEN_M = mFromFt(50); // definition: the screen height of take-off distances
const SINK_BELOW_M = mFromFt(300); // common practice: the gate of a circuit
const NEAR_SINK_MPS = mpsFromFpm(700); // common practice: a steep approach, not yet a fall
const TO_GROUND_S = 5; // estimate: to see, to decide and to stop it
const GLIDING = 0.1; // our choice: a lever all but closed
const GLIDE_SINK_MPS = mpsFromFpm(1300); // estimate: a glide with all the flap, and a gust
const GLIDE_TO_GROUND_S = 2; // estimate: later the round-out comes too late
const LANDING_M = mFromFt(25); // FAA-H-8083-3C p. 9-8: the round-out begins at 10 to 20 ft
const BALLOON_MPS = 0.5; // estimate: rising for anybody to see
const PITCHED_UP_RAD = radFromDeg(9); // estimate: above any landing attitude that can be held
const DROPPING_MPS = mpsFromFpm(250); // estimate: it no longer settles, it falls
const BALLOON_HIGH_M = mFromFt(12); // FAA-H-8083-3C p. 9-33, excessive: no figure there; estimate
const HOP_M = mFromFt(1); // as watch/touchdown.ts: common practice
const HIGH_HOP_M = mFromFt(5); // as watch/go-around.ts: common practice
const AHEAD_RAD = radFromDeg(45); // common practice: 30 degrees either side, and the turn still going on
const CLIMBING_S = 5; // estimate: from full power to a climb
const STEEP_RAD = radFromDeg(40); // the safety stops' own bank (watch/safety.ts): common practice
const STEEP_FINAL_RAD = radFromDeg(33); // derived: the 30 degrees of the South African procedures, and a wobble
const EASY_RAD = radFromDeg(15); // estimate: rolled out as far as matters
const NO_TURN_BACK_M = mFromFt(1000); // New Zealand Flight Instructor Guide, engine failure after take-off
const SETTLED_M = mFromFt(4); // estimate: low enough to let it settle
const CLIMB_MPS = mpsFromFpm(50); // estimate: no climb that anybody would call one
const AGAIN_S = 6; // our choice: heard out, and a breath
const WITH_SPEED = 1.35; // common practice: a little over the 1.3 of an approach
const EASY_SINK_MPS = mpsFromFpm(400); // derived: about 3 degrees at 70 kt

const DROP_BELOW_M = mFromFt(15); // FAA-H-8083-3C p. 9-8: the round-out has begun by 10 to 20 ft
const DROP_MPS = mpsFromFpm(450); // estimate: three times what a good touch is

/** Where low is where one is going. */
const ON_THE_WAY_DOWN: ReadonlySet<LegName> = new Set([
  'turn-to-final',
  'final',
  'base',
  'turn-to-base',
  'go-around',
]);

const FLARING: ReadonlySet<LegName> = new Set([
  'hold-off',
  'landing-roll',
  'stopped',
  'line-up',
  'take-off-roll',
]);

/** Speed over the stalling speed of this flap, mass and load. */
export const stallMargin = (s: Readonly<Snapshot>): number =>
  s.iasMps / (s.stallIasMps * Math.sqrt(Math.max(0.25, s.loadFactor)));

const isFlying = ({ m, s }: CoachContext): boolean => {
  if (s.onGround || FLARING.has(m.legs.leg)) return false;
  const lifting = m.legs.leg === 'upwind' && m.legs.highestClearM < SCREEN_M;
  return s.wheelClearanceM > (lifting ? SCREEN_M : LOW_M);
};

const knots = (mps: number): string => `${fixed(ktFromMps(mps))} knots`;
const feet = (m: number): string => `${fixed(ftFromM(m))} feet`;
const glide = ({ lesson }: CoachContext): string => `${lesson.aeroplane.speeds.glideKt} knots`;
const climb = ({ lesson }: CoachContext): string => `${lesson.aeroplane.speeds.goAroundKt} knots`;

const NOSE_HIGH_RAD = radFromDeg(2); // estimate: above the horizon for anybody to see
const noseIsHigh = ({ s }: CoachContext): boolean => s.pitchRad > NOSE_HIGH_RAD;

const TURNING_RAD = radFromDeg(25); // common practice: a medium turn

/** In a turn the bank is half of the reason. */
const slowWas = ({ s }: CoachContext): string => {
  const bank = Math.abs(s.bankRad);
  const turning = bank > TURNING_RAD ? ` for ${fixed(degFromRad(bank))} degrees of bank` : '';
  return `You were slow${turning}: ${knots(s.iasMps)} at ${feet(s.wheelClearanceM)}.`;
};

const overRunway = ({ lesson, m }: CoachContext): boolean =>
  lesson.where.alongM > lesson.runway.surfaceStartM - 60 && m.legs.leg !== 'upwind';

const openDue = ({ m }: Pick<CoachContext, 'm'>) =>
  m.dues.find((d) => !d.answered && d.circuit === m.legs.circuit);

/** In the order of harm: the first that holds is said. */
export const DANGERS: readonly Danger[] = [
  {
    id: 'stall',
    lastsS: 0.2,
    holds: (c) => isFlying(c) && (c.s.warner || c.s.stalled || stallMargin(c.s) < 1.06),
    cured: ({ s }) => s.onGround || (!s.warner && stallMargin(s) > 1.15),
    say: (c) => {
      const relax = noseIsHigh(c) ? 'nose to the horizon' : 'release the back pressure';
      return c.s.engineDead
        ? `Stall: ${relax}, wings level; then ${glide(c)}.`
        : `Stall: ${relax}, full power, wings level.`;
    },
    was: slowWas,
    source: 'FAA-H-8083-3C ch. 5 (from memory): reduce the angle of attack, roll level, power',
  },
  {
    id: 'bank-low',
    lastsS: 0.3,
    holds: (c) => {
      if (!isFlying(c)) return false;
      const bank = Math.abs(c.s.bankRad);
      const low = c.s.wheelClearanceM < HIGH_M && bank > STEEP_RAD;
      const { leg } = c.m.legs;
      const lowOnFinal = leg === 'final' && c.s.wheelClearanceM < HIGH_M;
      return low || ((leg === 'turn-to-final' || lowOnFinal) && bank > STEEP_FINAL_RAD);
    },
    cured: ({ s }) => s.onGround || Math.abs(s.bankRad) < EASY_RAD,
    say: ({ s }) =>
      s.engineDead ? 'Roll level now, and land ahead.' : 'Roll level now, full power, go around.',
    was: ({ s }) =>
      `You banked ${fixed(degFromRad(Math.abs(s.bankRad)))} degrees at ${feet(s.wheelClearanceM)}; past 30 on the way to final, go around.`,
    source: 'South African instructor procedures: never beyond 30 deg onto final; 40 deg: common practice',
  },
  {
    id: 'sink-low',
    lastsS: 0.3,
    holds: (c) => {
      const sink = -c.s.verticalSpeedMps;
      const { wheelClearanceM } = c.s;
      if (!isFlying(c) || c.s.engineDead || wheelClearanceM > SINK_BELOW_M) return false;
      // A glide comes down quicker, and is rounded out from higher up
      const glides = c.lesson.task.technique === 'glide' && c.s.throttle < GLIDING;
      const most = glides ? GLIDE_SINK_MPS : MOST_SINK_MPS;
      const leftS = glides ? GLIDE_TO_GROUND_S : TO_GROUND_S;
      return sink > most || (sink > NEAR_SINK_MPS && wheelClearanceM < leftS * sink);
    },
    cured: ({ s }) => s.onGround || s.verticalSpeedMps > -EASY_SINK_MPS,
    say: ({ s }) =>
      stallMargin(s) < 1.25
        ? 'Sinking fast: full power now, wings level, go around.'
        : 'Sinking fast: full power, wings level, nose to the horizon, go around.',
    was: ({ s }) =>
      `You were sinking ${fixed(-fpmFromMps(s.verticalSpeedMps))} feet a minute at ${feet(s.wheelClearanceM)}.`,
    source: 'Flight Safety Foundation ALAR 7.1: 1,000 ft/min; power first: FAA-H-8083-3C p. 9-4',
  },
  {
    id: 'slow-low',
    lastsS: 0.5,
    holds: (c) => isFlying(c) && !c.s.engineDead && c.s.wheelClearanceM < HIGH_M && stallMargin(c.s) < 1.2,
    cured: ({ s }) => s.onGround || stallMargin(s) > 1.24,
    say: (c) => {
      if (c.s.throttle < FULL_POWER) return 'Slow: full power now, nose no higher.';
      return noseIsHigh(c)
        ? `Slow: nose to the horizon, until ${climb(c)} come.`
        : 'Slow: full power, nose no higher, let the speed come.';
    },
    was: slowWas,
    source: 'FAA-H-8083-3C p. 9-4, too low: power first; 1.2 Vs: common practice',
  },
  {
    id: 'engine-out',
    lastsS: 0.3,
    holds: ({ s }) => s.engineDead && !s.onGround && s.wheelClearanceM > LANDING_M,
    say: (c) => {
      const back =
        c.m.engine !== null && c.m.engine.turnedRad > AHEAD_RAD && c.s.wheelClearanceM < NO_TURN_BACK_M;
      return back
        ? `No turning back: roll level, ${glide(c)}, land ahead.`
        : `Engine: gliding attitude, ${glide(c)}; a field ahead, within 30 degrees.`;
    },
    was: () => '',
    source:
      'New Zealand Flight Instructor Guide, engine failure after take-off: nose down, a field ahead; ±30 deg quoted',
  },
  {
    id: 'bounce',
    lastsS: 0,
    holds: ({ m, s }) =>
      m.wheels.landing &&
      !s.onGround &&
      s.throttle < FULL_POWER &&
      m.wheels.highestHopM > HOP_M &&
      s.wheelClearanceM > 0.2,
    cured: ({ s }) => s.onGround || s.throttle > FULL_POWER,
    say: ({ m, s }) =>
      m.wheels.highestHopM > HIGH_HOP_M || stallMargin(s) < 1.05
        ? 'Bounced: go around, full power, hold the nose there.'
        : 'Bounced: hold the nose there, a little power, let it settle.',
    was: ({ m }) => `You bounced to ${feet(m.wheels.highestHopM)}.`,
    source: 'FAA-H-8083-3C p. 9-34, bouncing during touchdown',
  },
  {
    id: 'balloon',
    lastsS: 0.3,
    holds: (c) =>
      !c.s.onGround &&
      overRunway(c) &&
      c.m.flare.roundOutM !== null &&
      !c.m.wheels.landing &&
      c.s.wheelClearanceM > SETTLED_M &&
      c.s.wheelClearanceM < SCREEN_M &&
      c.s.throttle < FULL_POWER &&
      c.s.verticalSpeedMps > BALLOON_MPS,
    cured: ({ s }) =>
      s.onGround || s.throttle > FULL_POWER || (s.wheelClearanceM < SETTLED_M && s.verticalSpeedMps < 0),
    say: ({ s }) => {
      if (s.pitchRad > PITCHED_UP_RAD)
        return 'Ballooned: go around, full power, nose to the climbing attitude.';
      return s.wheelClearanceM > BALLOON_HIGH_M || stallMargin(s) < 1.1 || s.verticalSpeedMps < -DROPPING_MPS
        ? 'Ballooned: go around, full power, hold the nose there.'
        : 'Ballooned: hold the nose there, a little power, let it settle.';
    },
    was: ({ s }) => `It ballooned to ${feet(s.wheelClearanceM)}: pull less, and slower.`,
    source: 'FAA-H-8083-3C p. 9-33, ballooning during round-out',
  },
  {
    id: 'drop',
    lastsS: 0.2,
    holds: ({ m, s }) =>
      !s.onGround &&
      !s.engineDead &&
      !m.wheels.landing &&
      (m.legs.leg === 'hold-off' || m.legs.leg === 'final') &&
      s.throttle < FULL_POWER &&
      s.wheelClearanceM > SETTLED_M &&
      s.wheelClearanceM < DROP_BELOW_M &&
      s.verticalSpeedMps < -DROP_MPS,
    say: ({ s }) =>
      stallMargin(s) < 1.15
        ? 'Dropping: full power now, hold the attitude.'
        : 'Round out: nose to level, power with it.',
    was: () => '',
    source: 'FAA-H-8083-3C ch. 9, high round-out and late round-out: power at once; how much sink: estimate',
  },
  {
    id: 'low-in-circuit',
    lastsS: 2,
    holds: (c) =>
      isFlying(c) &&
      !c.s.engineDead &&
      !ON_THE_WAY_DOWN.has(c.m.legs.leg) &&
      c.m.legs.highestClearM > SINK_BELOW_M &&
      c.s.throttle < FULL_POWER &&
      c.s.wheelClearanceM < SINK_BELOW_M &&
      c.s.verticalSpeedMps < -CLIMB_MPS,
    cured: ({ s }) => s.onGround || s.throttle > FULL_POWER || s.verticalSpeedMps > 0,
    say: (c) => `Low: full power, wings level, ${climb(c)}, and climb.`,
    was: ({ s }) => `You were at ${feet(s.wheelClearanceM)}, still sinking, away from the runway.`,
    source:
      'common practice: no circuit is flown below 300 ft; power first: FAA-H-8083-3C ch. 9, low final approach',
  },
  {
    id: 'go-around-power',
    lastsS: 1,
    holds: (c) =>
      c.m.legs.leg === 'go-around' &&
      isFlying(c) &&
      !c.s.engineDead &&
      c.s.wheelClearanceM < HIGH_M &&
      c.s.throttle < FULL_POWER,
    say: () => 'Going around: full power.',
    was: () => 'A go-around takes all the power there is, at once.',
    source: 'FAA-H-8083-3C p. 9-11 and 9-12: power, attitude, configuration',
  },
  {
    id: 'go-around-climb',
    lastsS: CLIMBING_S,
    holds: (c) =>
      c.m.legs.leg === 'go-around' &&
      isFlying(c) &&
      c.s.throttle >= FULL_POWER &&
      c.s.wheelClearanceM < HIGH_M &&
      c.s.verticalSpeedMps < CLIMB_MPS &&
      stallMargin(c.s) > 1.35,
    say: (c) => `Climb away: climbing attitude, ${climb(c)}.`,
    was: () => '',
    source: 'FAA-H-8083-3C p. 9-11 and 9-12: power, attitude, configuration',
  },
  {
    id: 'unstable',
    lastsS: 0.2,
    holds: ({ m, s }) =>
      m.legs.leg !== 'go-around' &&
      m.legs.leg !== 'upwind' &&
      !s.onGround &&
      s.throttle < FULL_POWER &&
      openDue({ m }) !== undefined,
    // What asked for it; its figures are of the gate, stand in the result, and would be stale by now
    say: (c) => {
      const nose = stallMargin(c.s) > WITH_SPEED && c.s.pitchRad < 0 ? ', nose to the horizon' : '';
      return `Go around, full power${nose}: ${openDue(c)?.why.split(': ')[0] ?? 'not stabilised'}.`;
    },
    was: () => '',
    source: 'Flight Safety Foundation ALAR 7.1; FAA-H-8083-3C p. 9-11, go-arounds',
  },
];

/** What the safety layer carries from look to look. */
export interface DangerMemory {
  /** Since when each situation has held. */
  since: Record<string, number>;
  /** The one that stands. */
  id: string;
  /** What it said last, so that a worse form of it is said too. */
  text: string;
  /** When that was. */
  saidS: number;
  /** What is told once it is cured. */
  was: string;
}

export const beginDangers = (): DangerMemory => ({ since: {}, id: '', text: '', saidS: 0, was: '' });

/** What one look of the safety layer comes to. */
export interface DangerNow {
  /** It has the word, and nobody else. */
  readonly stands: boolean;
  /** To be said now; null: has been said, or there is nothing. */
  readonly say: string | null;
}

const NONE: DangerNow = { stands: false, say: null };

/** One look of the safety layer. */
export const watchDangers = (d: DangerMemory, c: CoachContext): DangerNow => {
  const nowS = c.s.timeS;
  for (const { id, holds } of DANGERS) {
    if (holds(c)) d.since[id] ??= nowS;
    else delete d.since[id];
  }
  const due = DANGERS.find(({ id, lastsS }) => nowS - (d.since[id] ?? Number.POSITIVE_INFINITY) >= lastsS);
  const standing = DANGERS.find(({ id }) => id === d.id);
  const isCured =
    standing === undefined || (d.since[standing.id] === undefined && (standing.cured?.(c) ?? true));
  const worse =
    due !== undefined &&
    (isCured || (standing !== undefined && DANGERS.indexOf(due) < DANGERS.indexOf(standing)));
  if (worse) {
    if (due.id !== d.id) d.was = due.was(c);
    d.id = due.id;
    d.text = due.say(c);
    d.saidS = nowS;
    return { stands: true, say: d.text };
  }
  if (isCured) {
    const { was } = d;
    d.id = '';
    d.text = '';
    d.was = '';
    return was === '' ? NONE : { stands: false, say: was };
  }
  const text = standing.say(c);
  // While nothing is done about it, it is said again
  if (text === d.text && nowS - d.saidS < AGAIN_S) return { stands: true, say: null };
  d.saidS = nowS;
  d.text = text;
  return { stands: true, say: text };
};
