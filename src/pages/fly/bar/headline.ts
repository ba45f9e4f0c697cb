import { flownTitle } from '../../../flight/outcome-words.ts';
import type { Scenario, Weather } from '../../../simulation/scenario.ts';
import { headingDigits } from '../../../units/format.ts';
import type { Headline } from '../../store.ts';

/** Surface wind as it is said: "wind 250° 11 kt gusting 16". */
export const windWords = (weather: Weather): string => {
  if (weather.windKt === 0 && weather.gustKt === null) return 'wind calm';
  const gust = weather.gustKt === null ? '' : ` gusting ${weather.gustKt}`;
  return `wind ${headingDigits(weather.windFromDegM)}° ${weather.windKt} kt${gust}`;
};

/** "late-base-turn" as a title; the catalogue itself is not needed before the flight is judged. */
const titleOf = (exerciseId: string): string => {
  const words = exerciseId
    .replaceAll('-', ' ')
    .replace(/take off|go around|touch and go/, (one) => one.replaceAll(' ', '-'));
  return words.charAt(0).toUpperCase() + words.slice(1);
};

export const headlineOf = (scenario: Scenario, side: 1 | -1): Headline => ({
  exercise: flownTitle(titleOf(scenario.exercise), scenario.exercise, scenario.start.leg),
  aerodrome: scenario.aerodrome.title,
  runway: scenario.runway,
  side: side > 0 ? 'right-hand' : 'left-hand',
  wind: windWords(scenario.weather),
});
