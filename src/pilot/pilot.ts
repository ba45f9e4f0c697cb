import type { CircuitPlan } from '../circuit/types.ts';
import type { Controls } from '../simulation/controls.ts';
import type { Model } from '../simulation/model.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import type { ControlSource } from '../simulation/source.ts';
import type { Briefing } from './briefing/briefing.ts';
import { briefingFor } from './briefing/briefing-for.ts';
import { elevatorFor } from './briefing/habits.ts';
import { handsOn, moveHands } from './hands.ts';
import { wheelRad } from './holds/attitude.ts';
import { phaseHere, regimeIn } from './joining.ts';
import { alongTheField } from './legs/land-ahead.ts';
import { setLevers } from './levers.ts';
import { listen } from './listen.ts';
import { beginPhase, type PilotMemory } from './memory.ts';
import { believedIasMps } from './needle.ts';
import { PHASES } from './phases.ts';
import { DELAY_TICKS, STEPS_A_TICK, TICK_S } from './tick.ts';
import { touchOf } from './touch.ts';
import { newPilotView, type PilotView, pilotView } from './view.ts';

export { refusal } from './briefing/refusal.ts';
export type { PilotMemory } from './memory.ts';

const SPEED_LAG_S = 0.6; // tuned
const TREND_LAG_S = 1.2; // tuned
const SINK_LAG_S = 0.3; // tuned
const BANK_LAG_S = 1; // tuned
const SETTLED_S = 3; // tuned
const ROUGHNESS_S = 8; // tuned

/**
 * Somebody's own ways, for who flies like the model pilot but for some habit: they may change what is seen
 * before a look and what was decided after it, and carry nothing over themselves.
 */
export interface Ways {
  beforeLook(b: Briefing, m: PilotMemory, v: PilotView): void;
  afterLook(b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void;
}

/**
 * The model pilot: flies the planned circuit from wherever it takes over to a stop, closed loop, by what a pilot
 * can know. Twenty looks a second, 0.2 s from seeing to acting, hands of finite speed.
 */
export const createPilot = (
  model: Model,
  plan: CircuitPlan,
  ways: Ways | null = null,
  b: Briefing = briefingFor(model, plan),
): ControlSource<PilotMemory> => {
  const leg = model.scenario.start.leg;
  return {
    name: 'model pilot',
    begin(snapshot, controls) {
      const view = pilotView(snapshot, b.runway, b.side, newPilotView());
      const asked = snapshot.step === 0 ? leg : null;
      return takeOver(b, view, controls, asked === null || asked === 'line-up' ? null : asked);
    },
    next(snapshot, memory, controls) {
      if (snapshot.step % STEPS_A_TICK === 0) look(b, memory, snapshot, ways);
      moveHands(memory.hands, b.side, controls);
    },
  };
};

/** One look: act on the oldest view, then put the newest in its place. */
const look = (b: Briefing, m: PilotMemory, snapshot: Readonly<Snapshot>, ways: Ways | null): void => {
  const place = m.looks % DELAY_TICKS;
  m.looks += 1;
  const v = m.views[place] as PilotView;
  v.iasMps = believedIasMps(b, m, v);
  ways?.beforeLook(b, m, v);
  average(m, v);
  listen(b, m, v);
  const down = m.phase === 'round-out' || m.phase === 'landing-roll';
  PHASES[m.phase](b, m, m.engineOut && down ? alongTheField(m, v) : v);
  touchOf(b)(b, m, v);
  setLevers(b, m, v);
  ways?.afterLook(b, m, v);
  m.lastHeightM = v.heightM;
  pilotView(snapshot, b.runway, b.side, v);
};

/** What an eye makes of jittering needles. */
const average = (m: PilotMemory, v: Readonly<PilotView>): void => {
  const before = m.iasMps;
  m.iasMps += (v.iasMps - m.iasMps) * (TICK_S / SPEED_LAG_S);
  m.iasTrendMps2 += ((m.iasMps - before) / TICK_S - m.iasTrendMps2) * (TICK_S / TREND_LAG_S);
  m.verticalSpeedMps += (v.verticalSpeedMps - m.verticalSpeedMps) * (TICK_S / SINK_LAG_S);
  m.settledIasMps += (v.iasMps - m.settledIasMps) * (TICK_S / SETTLED_S);
  m.settledVerticalSpeedMps += (v.verticalSpeedMps - m.settledVerticalSpeedMps) * (TICK_S / SETTLED_S);
  m.roughnessMps += (Math.abs(v.iasMps - m.iasMps) - m.roughnessMps) * (TICK_S / ROUGHNESS_S);
  m.smoothBankRad += (v.bankRad - m.smoothBankRad) * (TICK_S / BANK_LAG_S);
};

/** "I have control": the hands stay where they are, and the pilot finds out where in the circuit this is. */
const takeOver = (
  b: Briefing,
  view: PilotView,
  controls: Readonly<Controls>,
  leg: Parameters<typeof phaseHere>[2],
): PilotMemory => {
  const hands = handsOn(controls, b.side);
  const phase = phaseHere(b, view, leg, controls.throttle);
  const regime = regimeIn(b, phase, hands.flapStage);
  const pull = controls.elevator * (controls.elevator > 0 ? b.shape.elevatorUpRad : b.shape.elevatorDownRad);
  const heldRad = pull + wheelRad(b, controls.trim);
  const feedRad = elevatorFor(b.habits[regime], controls.throttle);
  const m: PilotMemory = {
    phase,
    phaseFromS: view.timeS,
    looks: 0,
    // Each made by the same literal: a copy by spreading is another shape to the engine, and dearer to fill
    views: Array.from({ length: DELAY_TICKS }, () => Object.assign(newPilotView(), view)),
    hands,
    regime,
    needleIasMps: view.iasMps,
    attitudeIasMps: view.iasMps,
    needleWrongS: 0,
    needleSeenMps: view.iasMps,
    needleMovedMps: 0,
    needleTremblesMps: 0,
    needleDead: false,
    iasMps: view.iasMps,
    iasTrendMps2: 0,
    verticalSpeedMps: view.verticalSpeedMps,
    settledIasMps: view.iasMps,
    settledVerticalSpeedMps: view.verticalSpeedMps,
    smoothBankRad: view.bankRad,
    roughnessMps: 0,
    pitchWantedRad: view.pitchRad,
    pitchExpectedRad: view.pitchRad,
    bankExpectedRad: view.bankRad,
    feedRad,
    pitchHoldRad: heldRad - feedRad,
    pathWantedMps: view.verticalSpeedMps,
    tradeHoldRad: 0,
    flareHoldRad: 0,
    sideHoldRad: 0,
    powerHold: 0,
    bankWantedRad: view.bankRad,
    bankHold: 0,
    rudderHold: 0,
    slipFoot: 0,
    turning: false,
    // On downwind past abeam the climb is over, wherever the height is
    levelled:
      view.heightM > b.plan.heightM - LEVEL_M ||
      phase === 'base' ||
      phase === 'final' ||
      (phase === 'downwind' && view.xM <= 0),
    landings: 0,
    goArounds: 0,
    floats: 0,
    goAroundWhy: '',
    lastHeightM: view.heightM,
    // Known once the turn to final is complete
    finalLengthM: phase === 'final' ? b.runway.aimM - view.xM : 0,
    touchedS: view.timeS,
    touchdowns: 0,
    driftS: 0,
    airborneS: 0,
    flapFromS: view.timeS,
    brakeS: 0,
    heard: [],
    orbitRad: 0,
    orbitTrackRad: 0,
    glideLeg: 'base',
    engineOut: false,
    landRad: 0,
  };
  beginPhase(m, view, phase);
  if (leg !== null) m.turning = false;
  return m;
};

const LEVEL_M = 20; // our choice: this near to circuit height is level
