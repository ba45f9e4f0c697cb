/** The model's right-hand side and its steady states, set up well above the ground: for truth tests. */
import type { Aeroplane } from '../../src/aeroplane/schema.ts';
import { type Air, type AirColumn, airColumn, columnDensityKgpm3 } from '../../src/atmosphere/air.ts';
import { isaPressurePa, isaTemperatureK } from '../../src/atmosphere/isa.ts';
import { cos, sin } from '../../src/maths/functions.ts';
import { engineShare } from '../../src/simulation/engine/engine.ts';
import { type Steady, type SteadyRequest, solveSteady } from '../../src/simulation/performance/steady.ts';
import { INTEGRATED, NOW, NOW_LENGTH } from '../../src/simulation/places.ts';
import { flapEffect, newFlapEffect, type Shape, shapeOf } from '../../src/simulation/shape.ts';
import { mpsFromKt } from '../../src/units/conversions.ts';

/** A standard day at an aerodrome of this elevation. */
export const standardAir = (elevationM: number): Air => ({
  elevationM,
  temperatureK: isaTemperatureK(elevationM),
  qnhPa: isaPressurePa(0),
});

/** The standard atmosphere from sea level up. */
export const ISA: AirColumn = airColumn(standardAir(0));

type Asked = Omit<Partial<SteadyRequest>, 'iasMps'>;

/** A steady state in the standard atmosphere at sea level, flap up, wings level, unless said otherwise. */
export const steadyAt = (aeroplane: Aeroplane, iasKt: number, asked: Asked, massKg?: number): Steady => {
  const shape = shapeOf(aeroplane, massKg);
  const found = solveSteady(shape, ISA, {
    iasMps: mpsFromKt(iasKt),
    altitudeM: 0,
    flapDeg: 0,
    gear: 1,
    bankRad: 0,
    carbHeat: 0,
    ...asked,
  });
  if (!found.ok) throw new Error(found.why);
  return found.steady;
};

/** What holds over a step, as `step` would lay it, from a steady state. */
export const nowAt = (shape: Shape, steady: Steady, altitudeM: number, flapDeg = 0): Float64Array => {
  const now = new Float64Array(NOW_LENGTH);
  const flap = flapEffect(shape, flapDeg, newFlapEffect());
  const density = columnDensityKgpm3(ISA, altitudeM);
  now[NOW.density] = density;
  now[NOW.elevatorRad] = steady.elevatorRad;
  now[NOW.throttle] = steady.throttle;
  now[NOW.torqueScale] = engineShare(density);
  now[NOW.flapLift] = flap.lift;
  now[NOW.flapDrag] = flap.drag;
  now[NOW.maximumLift] = flap.maximumLift;
  now[NOW.stallAlpha] = (flap.maximumLift - shape.cl0 - flap.lift) / shape.clAlpha;
  now[NOW.flapMoment] = flap.moment;
  now[NOW.thrustMoment] = flap.thrustMoment;
  now[NOW.gear] = 1;
  now[NOW.assist] = 1;
  return now;
};

/** The twelve integrated numbers of a steady state without bank, heading north. */
export const integratedAt = (steady: Steady, altitudeM: number): Float64Array => {
  const y = new Float64Array(INTEGRATED);
  y[2] = altitudeM;
  y[4] = steady.tasMps * cos(steady.flightPathRad);
  y[5] = steady.tasMps * sin(steady.flightPathRad);
  y[6] = steady.pitchRad;
  y[11] = steady.revps;
  return y;
};
