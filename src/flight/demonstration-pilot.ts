import type { CircuitPlan } from '../circuit/types.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import { beginLegs, type LegMemory, watchLegs } from '../lesson/watch/legs.ts';
import { LOOK_STEPS } from '../lesson/watch/look-interval.ts';
import { lookFrom } from '../lesson/watch/where.ts';
import { clamp } from '../maths/functions.ts';
import type { ControlSource } from '../session/source.ts';
import type { Controls } from '../simulation/controls.ts';
import type { Model } from '../simulation/model.ts';
import { STEP_S } from '../simulation/scenario.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { mpsFromKt } from '../units/conversions.ts';
import { type CheckTime, checkTakesS, checkTimes } from './check-times.ts';

/** The model pilot where checks and calls belong to the flight: it works what the checks want worked. */
export const DEMONSTRATION = 'model pilot, checks worked';

/** Plain data. */
export interface DemonstrationMemory {
  pilot: unknown;
  /** The same legs as the lesson sees them. */
  legs: LegMemory;
  /** Since when the check of this leg has been worked; null where it has none, or not yet. */
  checkFromS: number | null;
  /** Until when the take-off waits; null: it does not. */
  holdsUntilS: number | null;
}

/** From the last item to full power: the call, and with a tower its answer and the read-back. */
const CALL_S = { untowered: 5, towered: 11 } as const; // common practice: some fifteen letters a second
/** So long on downwind before hands are free for a check: rolled out, trimmed, the call made. */
const SETTLED_S = 4; // our choice: time for the call
/** Still climbing, it waits for the level-off, but not until base. */
const CLIMBS_MPS = 1; // our choice: about 200 ft/min
const CLIMBED_S = 26; // our choice: time enough for a whole check before base
/** A control is put over in half a second, held, and let go. */
const OVER_PER_S = 2.5; // estimate: an unhurried hand
const LEVER_PER_S = 0.8; // estimate: an unhurried hand
const WHEEL_PER_S = 0.15; // estimate: an unhurried hand
const BRAKES_HELD_S = 1.4; // our choice: pressed and felt
const HEAT_HELD_S = 10.8; // derived: the ten seconds of the check, and a little
const WAY_S = 1; // our choice: to one stop and back
const WAYS = [
  { elevator: 1, aileron: 0 },
  { elevator: -1, aileron: 0 },
  { elevator: 0, aileron: -1 },
  { elevator: 0, aileron: 1 },
] as const;

/** Out, held and back again: 0 to 1 over so many seconds. */
const stroke = (sinceS: number, lastsS: number): number =>
  clamp(Math.min(sinceS, lastsS - sinceS) * OVER_PER_S, 0, 1);

const isIn = (time: CheckTime, atS: number): boolean => atS >= time.fromS && atS < time.toS;

/** What of the controls an item wants moved, while it has its turn. */
const WORK: Partial<Record<CheckTime['name'], (controls: Controls, sinceS: number) => void>> = {
  brakes: (controls, sinceS) => {
    controls.brake = Math.max(controls.brake, stroke(sinceS, BRAKES_HELD_S));
  },
  heatTried: (controls, sinceS) => {
    if (sinceS < HEAT_HELD_S) controls.carbHeat = 1;
  },
  fullAndFree: (controls, sinceS) => {
    const way = WAYS[Math.floor(sinceS / WAY_S)];
    const over = stroke(sinceS % WAY_S, WAY_S);
    controls.elevator = (way?.elevator ?? 0) * over;
    controls.aileron = (way?.aileron ?? 0) * over;
  },
};

/**
 * The model pilot that demonstrates: before it takes off it works the check, item by item, and on downwind and after
 * the stop likewise; what is ticked and said for it is `demonstrates.ts`. Everything else is the pilot's own.
 */
export const demonstrationPilot = (
  pilot: ControlSource<unknown>,
  model: Model,
  plan: CircuitPlan,
): ControlSource<DemonstrationMemory> => {
  const { scenario, runway } = model;
  const { aeroplane } = scenario;
  const lesson = lessonOfScenario(scenario, runway, plan, null);
  const { where, bounds } = lesson;
  const radio = scenario.procedures?.radio ?? 'untowered';
  const before = checkTimes('before-take-off', aeroplane);
  const downwind = checkTimes('downwind', aeroplane);
  const after = checkTimes('after-landing', aeroplane);
  /** With a needle's width to the limit, as the pilot himself. */
  const gearMps = mpsFromKt((aeroplane.limits.gearOperatingKt ?? 999) - 2);
  const holdS = checkTakesS('before-take-off', aeroplane) + CALL_S[radio];

  const workItems = (
    times: readonly CheckTime[],
    m: DemonstrationMemory,
    s: Readonly<Snapshot>,
    c: Controls,
  ) => {
    const sinceS = s.timeS - (m.checkFromS ?? s.timeS);
    const time = times.find((each) => isIn(each, sinceS));
    if (time !== undefined) WORK[time.name]?.(c, sinceS - time.fromS);
  };

  const isBegun = (times: readonly CheckTime[], name: CheckTime['name'], sinceS: number): boolean =>
    times.some((time) => time.name === name && sinceS >= time.fromS);

  /** Once set for the landing, wheels, propeller and pump stay so. */
  const onDownwind = (m: DemonstrationMemory, s: Readonly<Snapshot>, c: Controls): void => {
    workItems(downwind, m, s, c);
    const sinceS = s.timeS - (m.checkFromS ?? s.timeS);
    if (isBegun(downwind, 'gearDown', sinceS) && s.iasMps < gearMps) c.gear = 1;
    if (isBegun(downwind, 'pumpOn', sinceS)) c.pump = 1;
    if (isBegun(downwind, 'propellerFine', sinceS))
      c.propeller = Math.min(1, s.propeller + LEVER_PER_S * STEP_S);
  };

  const beforeTakeOff = (m: DemonstrationMemory, s: Readonly<Snapshot>, c: Controls): void => {
    c.throttle = 0;
    c.elevator = 0;
    c.aileron = 0;
    workItems(before, m, s, c);
  };

  /** Levers to where the card wants them, one after the other. */
  const afterLanding = (m: DemonstrationMemory, s: Readonly<Snapshot>, c: Controls): void => {
    const sinceS = s.timeS - (m.checkFromS ?? s.timeS);
    const begun = (name: CheckTime['name']): boolean => isBegun(after, name, sinceS);
    if (begun('flapUp')) c.flapStage = 0;
    if (begun('heatCold')) c.carbHeat = 0;
    if (begun('pumpOff')) c.pump = 0;
    const most = begun('trim') ? WHEEL_PER_S * STEP_S : 0;
    c.trim = s.trim + clamp(aeroplane.pitch.trimTakeOff - s.trim, -most, most);
  };

  const watch = (m: DemonstrationMemory, s: Readonly<Snapshot>): void => {
    lookFrom(runway, plan.side, s, where);
    if (watchLegs(m.legs, where, bounds)) m.checkFromS = null;
    const { leg, seenS } = m.legs;
    if (m.checkFromS !== null) return;
    if (leg === 'stopped') m.checkFromS = s.timeS;
    if (leg !== 'downwind' || s.timeS - seenS < SETTLED_S) return;
    if (s.verticalSpeedMps < CLIMBS_MPS || s.timeS - seenS > CLIMBED_S) m.checkFromS = s.timeS;
  };

  return {
    name: DEMONSTRATION,
    begin: (s, controls) => {
      lookFrom(runway, plan.side, s, where);
      const stands = s.onGround && s.parked;
      return {
        pilot: pilot.begin(s, controls),
        legs: beginLegs(where, bounds),
        checkFromS: stands ? s.timeS : null,
        holdsUntilS: stands ? s.timeS + holdS : null,
      };
    },
    next: (s, m, controls, around) => {
      if (m.holdsUntilS !== null && s.timeS >= m.holdsUntilS) {
        m.holdsUntilS = null;
        m.checkFromS = null;
        m.pilot = pilot.begin(s, controls);
      }
      if (s.step % LOOK_STEPS === 0) watch(m, s);
      pilot.next(s, m.pilot, controls, around);
      if (m.holdsUntilS !== null) beforeTakeOff(m, s, controls);
      else if (m.checkFromS === null || (s.engineDead && !s.onGround)) return;
      else if (m.legs.leg === 'downwind') onDownwind(m, s, controls);
      else if (m.legs.leg === 'stopped') afterLanding(m, s, controls);
    },
  };
};
