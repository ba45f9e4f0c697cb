import type { Runway } from '../aerodrome/runway.ts';
import { endNames, runwayInUse } from '../aerodrome/runway.ts';
import type { Aerodrome } from '../aerodrome/schema.ts';
import type { Aeroplane } from '../aeroplane/schema.ts';
import type { Weather } from '../simulation/scenario.ts';
import { ktFromMps, mpsFromKt, radFromDeg } from '../units/conversions.ts';
import { fixed } from '../units/format.ts';
import { crosswindMps, headwindMps } from '../wind/components.ts';

/** The surface wind laid along and across a runway, gust included where one is reported. */
export interface RunwayWind {
  /** Of the mean wind, + against the landing. */
  readonly headwindMps: number;
  /** Of the mean wind, + from the right. */
  readonly crosswindMps: number;
  /** Of the gust (of the mean where none is reported), same signs. */
  readonly gustHeadwindMps: number;
  readonly gustCrosswindMps: number;
}

/** W cos and W sin of the angle between wind and runway, magnetic from magnetic. */
export function windOnRunway(runway: Runway, weather: Weather): RunwayWind {
  const fromRad = radFromDeg(weather.windFromDegM);
  const mean = mpsFromKt(weather.windKt);
  const gust = mpsFromKt(weather.gustKt ?? weather.windKt);
  return {
    headwindMps: headwindMps(fromRad, mean, runway.headingRadM),
    crosswindMps: crosswindMps(fromRad, mean, runway.headingRadM),
    gustHeadwindMps: headwindMps(fromRad, gust, runway.headingRadM),
    gustCrosswindMps: crosswindMps(fromRad, gust, runway.headingRadM),
  };
}

/** The end with more wind against the landing; the first end of the file when neither has. */
export function runwayByWind(aerodrome: Aerodrome, weather: Weather): string {
  const [first, second] = endNames(aerodrome);
  const against = windOnRunway(runwayInUse(aerodrome, first), weather).headwindMps;
  return against < -0.01 ? second : first;
}

/** Below this much over a limit the wind counts as at the limit: reports come in whole knots and tens of degrees. */
const OVER_MPS = mpsFromKt(0.1);

/** "15 kt", with a decimal where whole knots would read as the limit itself. */
const above = (windMps: number, limitKt: number): string => {
  const kt = ktFromMps(windMps);
  return fixed(kt, fixed(kt) === fixed(limitKt) ? 1 : 0);
};

/** One sentence for each limit of the aeroplane that the wind on this runway exceeds, gusts counted. */
export function windOverLimits(aeroplane: Aeroplane, runway: Runway, weather: Weather): readonly string[] {
  const wind = windOnRunway(runway, weather);
  const { crosswindKt, tailwindKt } = aeroplane.limits;
  const gust = weather.gustKt === null ? '' : ' in the gusts';
  const parts = [
    { name: 'crosswind', mps: Math.abs(wind.gustCrosswindMps), limitKt: crosswindKt },
    { name: 'tailwind', mps: -wind.gustHeadwindMps, limitKt: tailwindKt },
  ];
  return parts
    .filter(({ mps, limitKt }) => mps > mpsFromKt(limitKt) + OVER_MPS)
    .map(
      ({ name, mps, limitKt }) =>
        `The ${name} on runway ${runway.designator} is ${above(mps, limitKt)} kt${gust}, above the ${fixed(limitKt)} kt of ${aeroplane.title}.`,
    );
}
