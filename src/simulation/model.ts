import { groundHeightM, type Runway, runwayInUse } from '../aerodrome/runway.ts';
import { type AirColumn, airColumn } from '../atmosphere/air.ts';
import { type StreamSeed, seedStream } from '../maths/random.ts';
import { trueFromMagnetic, wrapPi } from '../units/angles.ts';
import {
  kelvinFromDegC,
  mFromFt,
  mpsFromFpm,
  mpsFromKt,
  paFromHpa,
  radFromDeg,
  revpsFromRpm,
} from '../units/conversions.ts';
import type { WindDrift } from '../wind/drift.ts';
import { meanWindFactor } from '../wind/profile.ts';
import { TERRAIN } from '../wind/terrain.ts';
import type { Wind } from '../wind/wind.ts';
import { icingSeverity } from './engine/carburettor.ts';
import { type Steady, type SteadyRequest, solveSteady } from './performance/steady.ts';
import type { AirStart, Scenario, Weather } from './scenario.ts';
import { type Shape, shapeOf } from './shape.ts';

/** A Scenario worked out once: everything the step needs that does not change. */
export interface Model {
  readonly scenario: Scenario;
  readonly shape: Shape;
  readonly runway: Runway;
  readonly air: AirColumn;
  readonly wind: Wind;
  /** Where the wind gets to in the course of the flight, or null when it stays. */
  readonly drift: WindDrift | null;
  readonly airSeed: StreamSeed;
  readonly topStage: number;
  /** 0 none to 1 severe, from temperature and dew point. */
  readonly icing: number;
  readonly runwayFriction: number;
  readonly grassFriction: number;
  /** Solved steady state of a start in the air, or null at the line-up. */
  readonly start: { readonly air: AirStart; readonly steady: Steady; readonly stage: number } | null;
}

/**
 * Rolling friction by surface. Tarmac within dry concrete's .02 to .05, grass within short dry grass's .05 to .10
 * (textbook ranges, from memory); grass lengthens the run by about 30 %.
 */
export const ROLLING_FRICTION = { tarmac: 0.025, grass: 0.08 } as const;

/** The day's wind in SI and true, from the weather as spoken and the ground around the aerodrome. */
export const windOf = (
  weather: Weather,
  { variationRad, circuitHeightM }: Pick<Runway, 'variationRad' | 'circuitHeightM'>,
  terrain: keyof typeof TERRAIN,
): Wind => {
  const surface: Wind = {
    fromRadT: trueFromMagnetic(radFromDeg(weather.windFromDegM), variationRad),
    speedMps: mpsFromKt(weather.windKt),
    gustMps: weather.gustKt === null ? null : mpsFromKt(weather.gustKt),
    roughnessM: TERRAIN[terrain].roughnessM,
    gradientHeightM: TERRAIN[terrain].gradientHeightM,
    veerRad: 0,
    turbulence: weather.turbulence,
    above: null,
  };
  if (weather.above === undefined) return surface;
  const fromRadT = trueFromMagnetic(radFromDeg(weather.above.windFromDegM), variationRad);
  const calm = weather.windKt === 0;
  return {
    ...surface,
    // A calm has no direction of its own
    fromRadT: calm ? fromRadT : surface.fromRadT,
    above: {
      heightM: circuitHeightM,
      addMps: mpsFromKt(weather.above.windKt) - surface.speedMps * meanWindFactor(surface, circuitHeightM),
      turnRad: calm ? 0 : wrapPi(fromRadT - surface.fromRadT),
    },
  };
};

/** Where the day's wind gets to, in SI and true; null when it stays as it is. */
const driftOf = ({ driftTo }: Weather, variationRad: number): WindDrift | null =>
  driftTo === undefined
    ? null
    : {
        fromRadT: trueFromMagnetic(radFromDeg(driftTo.windFromDegM), variationRad),
        speedMps: mpsFromKt(driftTo.windKt),
        overS: driftTo.overS,
      };

/** The day's air above an aerodrome. `elevationM` is the elevation the temperature was measured at. */
export const airOf = (weather: Weather, elevationM: number): AirColumn =>
  airColumn({
    elevationM,
    temperatureK: kelvinFromDegC(weather.temperatureC),
    qnhPa: paFromHpa(weather.qnhHpa),
  });

/** The flap stage whose angle this is; an Error sentence when none is. */
const stageOf = (shape: Shape, flapDeg: number): number => {
  const stages = shape.aeroplane.flap.stages;
  const stage = stages.findIndex((s) => Math.abs(s.deg - flapDeg) < 1e-6);
  if (stage < 0)
    throw new Error(
      `start: flap_deg must be one of ${stages.map((s) => s.deg).join(', ')} for ${shape.aeroplane.id}, was ${flapDeg}`,
    );
  return stage;
};

const requestOf = (start: AirStart, altitudeM: number): SteadyRequest => {
  const given = (['flight_path_deg', 'vertical_speed_fpm', 'rpm', 'throttle'] as const).filter(
    (key) => start[key] !== undefined,
  );
  if (given.length !== 1)
    throw new Error(
      `start: exactly one of flight_path_deg, vertical_speed_fpm, rpm and throttle is needed, found ${given.length === 0 ? 'none' : given.join(' and ')}`,
    );
  return {
    iasMps: mpsFromKt(start.ias_kt),
    altitudeM,
    flapDeg: start.flap_deg,
    gear: start.gear === 'down' ? 1 : 0,
    bankRad: radFromDeg(start.bank_deg),
    carbHeat: 0,
    ...(start.propeller !== undefined && { propeller: start.propeller }),
    ...(start.flight_path_deg !== undefined && { flightPathRad: radFromDeg(start.flight_path_deg) }),
    ...(start.vertical_speed_fpm !== undefined && { verticalSpeedMps: mpsFromFpm(start.vertical_speed_fpm) }),
    ...(start.rpm !== undefined && { revps: revpsFromRpm(start.rpm) }),
    ...(start.throttle !== undefined && { throttle: start.throttle }),
  };
};

/**
 * Works out a scenario. Throws an Error sentence when it cannot begin: an unknown runway, a start below ground,
 * in a state this aeroplane cannot hold, or that the trim wheel cannot carry.
 */
export const prepare = (scenario: Scenario): Model => {
  const shape = shapeOf(scenario.aeroplane);
  const runway = runwayInUse(scenario.aerodrome, scenario.runway);
  const air = airOf(scenario.weather, runway.thresholdElevationM);
  const base = {
    scenario,
    shape,
    runway,
    air,
    wind: windOf(scenario.weather, runway, scenario.aerodrome.terrain),
    drift: driftOf(scenario.weather, runway.variationRad),
    airSeed: seedStream(`${scenario.seed}/air/0`),
    topStage: scenario.aeroplane.flap.stages.length - 1,
    icing: scenario.aeroplane.engine.carburettor ? icingSeverity(scenario.weather) : 0,
    runwayFriction: ROLLING_FRICTION[runway.surface],
    grassFriction: ROLLING_FRICTION.grass,
  };
  const at = scenario.start.at;
  if (at === 'line-up') return { ...base, start: null };
  const along = at.east_m * runway.sinHeading + at.north_m * runway.cosHeading;
  const heightM = mFromFt(at.height_ft);
  if (heightM <= groundHeightM(runway, along))
    throw new Error(
      `start: height_ft must be above the ground (${(groundHeightM(runway, along) / mFromFt(1)).toFixed(0)} ft there), was ${at.height_ft}`,
    );
  if (at.gear === 'up' && !scenario.aeroplane.undercarriage.retractable)
    throw new Error(`start: gear must be "down" for ${shape.aeroplane.id}, whose gear is fixed, was "up"`);
  const found = solveSteady(shape, air, requestOf(at, runway.thresholdElevationM + heightM));
  if (!found.ok) throw new Error(`start: ${found.why}`);
  if (scenario.start.trimmed && Math.abs(found.steady.trim) > 1)
    throw new Error(
      `start: the trim wheel cannot carry ${at.ias_kt} kt with flap ${at.flap_deg}; it would have to stand at ${found.steady.trim.toFixed(2)}, expected -1 to 1`,
    );
  return { ...base, start: { air: at, steady: found.steady, stage: stageOf(shape, at.flap_deg) } };
};
