import type { Scenario, Weather } from '../../simulation/scenario.ts';
import { headingDigits } from '../../units/format.ts';
import type { Headline } from '../store.ts';

/** Surface wind as it is said: "wind 250° 11 kt gusting 16". */
export const windWords = (weather: Weather): string => {
  if (weather.windKt === 0 && weather.gustKt === null) return 'wind calm';
  const gust = weather.gustKt === null ? '' : ` gusting ${weather.gustKt}`;
  return `wind ${headingDigits(weather.windFromDegM)}° ${weather.windKt} kt${gust}`;
};

export const headlineOf = (scenario: Scenario, exercise: string, side: 1 | -1): Headline => ({
  exercise,
  aerodrome: scenario.aerodrome.title,
  runway: scenario.runway,
  side: side > 0 ? 'right-hand' : 'left-hand',
  wind: windWords(scenario.weather),
});
