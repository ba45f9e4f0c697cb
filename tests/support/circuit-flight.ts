/** Whole circuits by the model pilot, measured from outside: by position, track and height, never by its own word. */
import { acrossM, alongM, type Runway } from '../../src/aerodrome/runway.ts';
import { lightLetters, newSeenLights, seeLights } from '../../src/aerodrome/slope-lights.ts';
import { planCircuit } from '../../src/circuit/plan.ts';
import { startOfLeg } from '../../src/circuit/start-of-leg.ts';
import type { CircuitLeg, CircuitPlan } from '../../src/circuit/types.ts';
import { createPilot, type PilotMemory } from '../../src/pilot/pilot.ts';
import { type Model, prepare } from '../../src/simulation/model.ts';
import type { AirStart, Scenario } from '../../src/simulation/scenario.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import type { ControlSource } from '../../src/simulation/source.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps, mFromFt } from '../../src/units/conversions.ts';
import { aerodromeNamed } from './aerodromes.ts';
import { aeroplaneNamed } from './aeroplanes.ts';
import { standardWeather } from './circuits.ts';
import { beginFlight, type Flight, flyStep } from './flight.ts';

export interface Day {
  readonly aeroplane?: string;
  readonly aerodrome?: string;
  readonly runway?: string;
  /** Where the wind comes from, clockwise from the landing direction; 90 is a wind from the right. */
  readonly windDeg?: number;
  readonly windKt?: number;
  readonly gustKt?: number;
  readonly turbulence?: 'none' | 'light' | 'moderate';
  readonly temperatureC?: number;
  readonly seed?: number;
  readonly circuits?: number;
  readonly rudderAssist?: boolean;
  /** Not given: the line-up. */
  readonly leg?: CircuitLeg;
  readonly start?: AirStart;
  readonly trimmed?: boolean;
}

export interface Touchdown {
  readonly pastThresholdM: number;
  readonly pastAimM: number;
  readonly pastSpecifiedFt: number;
  readonly sinkFpm: number;
  readonly iasKt: number;
  readonly centrelineM: number;
  readonly crabDeg: number;
  readonly driftKt: number;
  readonly pitchDeg: number;
  readonly noseFirst: boolean;
}

export interface Gate {
  readonly heightFt: number;
  readonly iasKt: number;
  readonly slopeDeg: number;
  readonly centrelineM: number;
  readonly bankDeg: number;
  readonly sinkFpm: number;
  readonly lights: string;
}

export interface CircuitFlown {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly plan: CircuitPlan;
  readonly flight: Flight;
  readonly stopped: boolean;
  readonly ended: string | null;
  readonly seconds: number;
  /** First contact of each landing. */
  readonly touchdowns: readonly Touchdown[];
  /** Of the last final. */
  readonly gates: readonly Gate[];
  readonly goArounds: number;
  /** On downwind, settled: lowest and highest, slowest and fastest, furthest off the planned spacing. */
  readonly downwind: { lowFt: number; highFt: number; slowKt: number; fastKt: number; offM: number };
  readonly baseTurnDeg: number;
  readonly rollOutFt: number;
  readonly overshootM: number;
  readonly bankDeg: { level: number; final: number };
  readonly stop: { remainingM: number; centrelineM: number };
  /** The stall warner sounded this long with the wheels above 20 ft. */
  readonly warnerS: number;
  readonly heldPressure: number;
}

const scenarioOfDay = (day: Day): Scenario => {
  const aerodrome = aerodromeNamed(day.aerodrome ?? 'curlew-sands');
  const end = aerodrome.runway.ends.find((e) => e.designator === day.runway) ?? aerodrome.runway.ends[0];
  const from = (end.headingDegM + (day.windDeg ?? 0) + 720) % 360;
  return {
    modelVersion: 1,
    exercise: 'story',
    aeroplane: aeroplaneNamed(day.aeroplane ?? 'sandpiper'),
    aerodrome,
    runway: end.designator,
    weather: standardWeather(aerodrome, {
      windFromDegM: from,
      windKt: day.windKt ?? 0,
      gustKt: day.gustKt ?? null,
      turbulence: day.turbulence ?? 'none',
      ...(day.temperatureC !== undefined && { temperatureC: day.temperatureC }),
    }),
    start: { at: day.start ?? 'line-up', trimmed: day.trimmed ?? false, leg: null },
    seed: day.seed ?? 1,
    assists: { rudder: day.rudderAssist ?? true },
    failures: [],
    circuits: day.circuits ?? 1,
  };
};

export const planOfDay = (scenario: Scenario): { model: Model; plan: CircuitPlan } => {
  const model = prepare(scenario);
  const { aeroplane, aerodrome, weather } = scenario;
  return { model, plan: planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather) };
};

export const dayScenario = (day: Day): { scenario: Scenario; model: Model; plan: CircuitPlan } => {
  const scenario = scenarioOfDay(day);
  const { model, plan } = planOfDay(scenario);
  if (day.leg === undefined) return { scenario, model, plan };
  const begun = {
    ...scenario,
    start: { at: startOfLeg(plan, day.leg), trimmed: day.trimmed ?? true, leg: day.leg },
  };
  return { scenario: begun, model: prepare(begun), plan };
};

/** Somebody else than the good pilot. */
export type Bend = (model: Model, plan: CircuitPlan) => ControlSource<PilotMemory>;

const LONGEST_S = 30 * 60;
const TWENTY_FT_M = mFromFt(20);
const GATES_FT = [500, 300, 200];

/** Flies a day from its start to a stop, or half an hour. */
export const flyDay = (day: Day, bend: Bend = createPilot, longestS = LONGEST_S): CircuitFlown => {
  const { scenario, model, plan } = dayScenario(day);
  const pilot = bend(model, plan);
  const flight = beginFlight(scenario);
  const memory = pilot.begin(flight.seen, flight.controls);
  const watch = newWatch(model.runway, plan);
  for (let i = 0; i < longestS * 60 && flight.seen.ended === null; i += 1) {
    flyStep(flight, (seen, controls) => pilot.next(seen, memory, controls));
    look(watch, flight.seen);
    if (flight.seen.parked && watch.touchdowns.length > 0) break;
  }
  const { seen } = flight;
  return {
    scenario,
    model,
    plan,
    flight,
    stopped: seen.parked && watch.touchdowns.length > 0,
    ended: seen.ended === null ? null : seen.endedWhy,
    seconds: seen.timeS,
    touchdowns: watch.touchdowns,
    gates: watch.gates,
    goArounds: memory.goArounds,
    downwind: watch.downwind,
    baseTurnDeg: watch.baseTurnDeg,
    rollOutFt: watch.rollOutFt,
    overshootM: watch.overshootM,
    bankDeg: watch.bankDeg,
    stop: {
      remainingM: model.runway.surfaceEndM - alongM(model.runway, seen.eastM, seen.northM),
      centrelineM: acrossM(model.runway, seen.eastM, seen.northM),
    },
    warnerS: watch.warnerSteps / 60,
    heldPressure: watch.heldPressure,
  };
};

interface Watch {
  readonly runway: Runway;
  readonly plan: CircuitPlan;
  readonly touchdowns: Touchdown[];
  gates: Gate[];
  downwind: { lowFt: number; highFt: number; slowKt: number; fastKt: number; offM: number };
  settledS: number;
  baseTurnDeg: number;
  rollOutFt: number;
  overshootM: number;
  bankDeg: { level: number; final: number };
  warnerSteps: number;
  heldPressure: number;
  turnedFinal: boolean;
  wasOnGround: boolean;
  airborne: boolean;
  lastHeightM: number;
  lastPartingMps: number;
}

const newWatch = (runway: Runway, plan: CircuitPlan): Watch => ({
  runway,
  plan,
  touchdowns: [],
  gates: [],
  downwind: { lowFt: 1e9, highFt: -1e9, slowKt: 1e9, fastKt: -1e9, offM: 0 },
  settledS: 0,
  baseTurnDeg: Number.NaN,
  rollOutFt: Number.NaN,
  overshootM: 0,
  bankDeg: { level: 0, final: 0 },
  warnerSteps: 0,
  heldPressure: 0,
  turnedFinal: false,
  wasOnGround: true,
  airborne: false,
  lastHeightM: 0,
  lastPartingMps: 0,
});

const lights = newSeenLights();

const look = (w: Watch, s: Readonly<Snapshot>): void => {
  const { runway, plan } = w;
  const { side } = plan;
  const x = alongM(runway, s.eastM, s.northM);
  const across = acrossM(runway, s.eastM, s.northM);
  const y = side * across;
  const track = degFromRad(wrapPi(side * wrapPi(s.trackRadT - runway.headingRadT)));
  const bank = degFromRad(side * s.bankRad);
  const air = !s.onGround && s.wheelClearanceM > TWENTY_FT_M;
  if (air) w.airborne = true;
  if (air && s.warner) w.warnerSteps += 1;

  const back = Math.abs(Math.abs(track) - 180) < 8;
  const level = back && Math.abs(bank) < 5 && y > plan.spacingM / 2 && air;
  w.settledS = level ? w.settledS + 1 / 60 : 0;
  if (w.settledS > 20 && x > 0 && s.heightM > plan.heightM - 60) {
    const d = w.downwind;
    d.lowFt = Math.min(d.lowFt, ftFromM(s.heightM));
    d.highFt = Math.max(d.highFt, ftFromM(s.heightM));
    d.slowKt = Math.min(d.slowKt, ktFromMps(s.iasMps));
    d.fastKt = Math.max(d.fastKt, ktFromMps(s.iasMps));
    d.offM = Math.max(d.offM, Math.abs(y - plan.spacingM));
  }
  if (w.settledS > 20 && x > 200) w.heldPressure = Math.abs(s.heldPressureDegKpa);
  if (back && bank > 6 && x < 0 && y > plan.spacingM / 2 && Number.isNaN(w.baseTurnDeg))
    w.baseTurnDeg = degFromRad(Math.atan2(-x, y));
  if (air && x < 0 && y > plan.spacingM / 3) w.bankDeg.level = Math.max(w.bankDeg.level, Math.abs(bank));
  const onto = air && x < 0 && y < plan.spacingM / 2 && track > -80 && track < -8;
  if (onto) {
    w.turnedFinal = true;
    w.bankDeg.final = Math.max(w.bankDeg.final, Math.abs(bank));
  }
  if (w.turnedFinal && air && x < 0) w.overshootM = Math.max(w.overshootM, -y);
  if (w.turnedFinal && air && Math.abs(track) < 4 && Math.abs(bank) < 4 && Number.isNaN(w.rollOutFt))
    w.rollOutFt = ftFromM(s.heightM);

  for (const heightFt of GATES_FT) {
    const gateM = mFromFt(heightFt);
    if (w.lastHeightM < gateM || s.heightM >= gateM || x > runway.aimM || Math.abs(track) > 30) continue;
    seeLights(runway, s.eyeEastM, s.eyeNorthM, s.eyeHeightM, lights);
    w.gates = w.gates.filter((gate) => gate.heightFt !== heightFt);
    w.gates.push({
      heightFt,
      iasKt: ktFromMps(s.iasMps),
      slopeDeg: degFromRad(Math.atan2(s.heightM - runway.slope * runway.aimM, runway.aimM - x)),
      centrelineM: across,
      bankDeg: bank,
      sinkFpm: -fpmFromMps(s.verticalSpeedMps),
      lights: lightLetters(lights),
    });
  }
  if (s.onGround && !w.wasOnGround && w.airborne) {
    w.airborne = false;
    const driftRad = wrapPi(s.trackRadT - runway.headingRadT);
    w.touchdowns.push({
      pastThresholdM: x,
      pastAimM: x - runway.aimM,
      pastSpecifiedFt: ftFromM(x - runway.specifiedM),
      sinkFpm: -fpmFromMps(w.lastPartingMps),
      iasKt: ktFromMps(s.iasMps),
      centrelineM: across,
      crabDeg: degFromRad(wrapPi(s.headingRadT - runway.headingRadT)),
      driftKt: ktFromMps(s.groundspeedMps * Math.sin(driftRad)),
      pitchDeg: degFromRad(s.pitchRad),
      noseFirst: s.noseWheelOnGround,
    });
  }
  w.wasOnGround = s.onGround;
  w.lastHeightM = s.heightM;
  w.lastPartingMps = s.verticalSpeedMps - runway.slope * s.groundspeedMps;
};
