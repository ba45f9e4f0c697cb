import type { Band } from '../../lesson/exercises/draw.ts';
import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { fixed } from '../../units/format.ts';

const span = (band: Band, unit: string): string =>
  typeof band === 'number'
    ? `${fixed(band)}${unit}`
    : band[0] === band[1]
      ? `${fixed(band[0])}${unit}`
      : `${fixed(band[0])} to ${fixed(band[1])}${unit}`;

const STARTS: Readonly<Record<string, string>> = {
  'line-up': 'at the line-up',
  balloon: 'over the runway, at the top of a balloon',
};

/** Where it begins, and the air that it draws: "It begins on downwind. Wind 3 to 10 kt, 0 to 40° off the runway." */
export const airWords = ({ start, weather }: Exercise): string => {
  const begins = `It begins ${STARTS[start.at] ?? `on ${start.at}`}.`;
  if (weather?.windKt === undefined && weather?.aboveStandardC === undefined) return `${begins} Calm air.`;
  const parts = [
    weather.windKt === undefined
      ? ''
      : `wind ${span(weather.windKt, ' kt')}, ${span(weather.windFromRunwayDeg ?? 0, '°')} off the runway`,
    weather.gustAddsKt === undefined ? '' : `gusts ${span(weather.gustAddsKt, ' kt')} above it`,
    weather.turbulence === undefined ? '' : `${weather.turbulence} turbulence`,
    weather.drift === undefined ? '' : 'going round while you fly',
    weather.aboveStandardC === undefined ? '' : `${span(weather.aboveStandardC, ' °C')} warmer than standard`,
  ].filter((part) => part !== '');
  const air = parts.join(', ');
  return `${begins} ${air.charAt(0).toUpperCase()}${air.slice(1)}.`;
};
