import type { Runway } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import { standardDay } from '../../simulation/performance/standard-day.ts';
import type { Weather } from '../../simulation/scenario.ts';
import { degFromRad } from '../../units/conversions.ts';
import { rounded } from '../rounded.ts';
import type { Draw } from './draw.ts';
import type { Exercise } from './exercise.ts';

/** A direction as it is spoken: whole degrees, 0 only when calm. */
const spoken = (deg: number): number => {
  const whole = Math.round(((deg % 360) + 360) % 360);
  return whole === 0 ? 360 : whole;
};

/** The day of one attempt: the exercise's bands drawn, then whatever was chosen otherwise. */
export const exerciseWeather = (
  exercise: Exercise,
  runway: Runway,
  aerodrome: Aerodrome,
  draw: Draw,
  chosen: Partial<Weather> = {},
): Weather => {
  const asked = exercise.weather ?? {};
  const standard = standardDay(aerodrome.elevationFt);
  const base = {
    turbulence: asked.turbulence ?? standard.turbulence,
    temperatureC: rounded(standard.temperatureC + draw.of('temperature', asked.aboveStandardC ?? 0), 2),
  };
  const wind = chosen.windKt === undefined ? exerciseWind(exercise, runway, draw) : {};
  return { ...standard, ...base, ...wind, ...chosen };
};

type Wind = Pick<Weather, 'windFromDegM' | 'windKt' | 'gustKt' | 'driftTo'>;

const exerciseWind = (exercise: Exercise, runway: Runway, draw: Draw): Wind => {
  const asked = exercise.weather ?? {};
  const windKt = rounded(draw.of('wind', asked.windKt ?? 0));
  if (windKt === 0) return { windFromDegM: 0, windKt: 0, gustKt: null };
  const side = asked.eitherSide === true ? draw.sign('side') : 1;
  const offDeg = side * draw.of('direction', asked.windFromRunwayDeg ?? 0);
  const fromDeg = degFromRad(runway.headingRadM) + offDeg;
  const adds = asked.gustAddsKt;
  const { drift } = asked;
  return {
    windFromDegM: spoken(fromDeg),
    windKt,
    gustKt: adds === undefined ? null : windKt + Math.max(1, rounded(draw.of('gust', adds))),
    ...(drift !== undefined && {
      driftTo: {
        windFromDegM: spoken(fromDeg + side * draw.of('turns', drift.turnsDeg)),
        windKt: Math.max(0, windKt + rounded(draw.of('adds', drift.addsKt))),
        overS: rounded(draw.of('over', drift.overS)),
      },
    }),
  };
};
