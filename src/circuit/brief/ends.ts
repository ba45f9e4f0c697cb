import { runwayInUse } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { Weather } from '../../simulation/scenario.ts';
import { ktFromMps, mpsFromKt } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { type RunwayWind, windOnRunway, windOverLimits } from '../runway-choice.ts';
import type { EndBrief, RunwayBrief } from './types.ts';

/** Less than this is not worth a word. */
const NOTHING_MPS = mpsFromKt(0.5);

const kt = (mps: number): string => fixed(Math.abs(ktFromMps(mps)));

/** "11 kt on the nose, 6 kt across from the right": the mean wind as it is told. */
function windWords(wind: RunwayWind): string {
  const { headwindMps, crosswindMps } = wind;
  const parts: string[] = [];
  if (Math.abs(headwindMps) >= NOTHING_MPS)
    parts.push(`${kt(headwindMps)} kt ${headwindMps > 0 ? 'on the nose' : 'from behind'}`);
  if (Math.abs(crosswindMps) >= NOTHING_MPS)
    parts.push(`${kt(crosswindMps)} kt across from the ${crosswindMps > 0 ? 'right' : 'left'}`);
  return parts.length === 0 ? 'no wind to speak of' : parts.join(', ');
}

const gustWords = ({ gustHeadwindMps, gustCrosswindMps }: RunwayWind): string =>
  windWords({
    headwindMps: gustHeadwindMps,
    crosswindMps: gustCrosswindMps,
    gustHeadwindMps,
    gustCrosswindMps,
  });

const endBrief = (
  aeroplane: Aeroplane,
  aerodrome: Aerodrome,
  weather: Weather,
  designator: string,
): EndBrief => {
  const runway = runwayInUse(aerodrome, designator);
  return {
    designator,
    wind: windOnRunway(runway, weather),
    overLimits: windOverLimits(aeroplane, runway, weather),
  };
};

/** Both ends in today's wind, laid against the aeroplane's limits, gusts counted. */
export function runwayBrief(
  aeroplane: Aeroplane,
  aerodrome: Aerodrome,
  weather: Weather,
  designator: string,
): RunwayBrief {
  const inUse = endBrief(aeroplane, aerodrome, weather, designator);
  const other = endBrief(aeroplane, aerodrome, weather, runwayInUse(aerodrome, designator).otherDesignator);
  const gusts = weather.gustKt === null ? '' : `; in the gusts ${gustWords(inUse.wind)}`;
  const better =
    other.wind.headwindMps > inUse.wind.headwindMps + NOTHING_MPS
      ? ` Runway ${other.designator} has the wind on the nose.`
      : '';
  return {
    inUse,
    other,
    crosswindLimitMps: mpsFromKt(aeroplane.limits.crosswindKt),
    tailwindLimitMps: mpsFromKt(aeroplane.limits.tailwindKt),
    sentence: `Runway ${designator}: ${windWords(inUse.wind)}${gusts}.${better}`,
  };
}
