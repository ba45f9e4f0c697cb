import { endNames } from '../aerodrome/runway.ts';
import { AERODROMES, AEROPLANES, EXERCISES } from '../catalogue.ts';

const CATALOGUE = {
  exercises: EXERCISES.map(({ id, title }) => ({ id, title })),
  aeroplanes: AEROPLANES.map(({ id, title }) => ({ id, title })),
  aerodromes: AERODROMES.map((a) => ({ id: a.id, title: a.title, runways: endNames(a) })),
};

/** What there is to fly, as lines to read or as JSON. */
export const listText = (asJson: boolean): string => {
  if (asJson) return `${JSON.stringify(CATALOGUE, null, 2)}\n`;
  const longest = Math.max(...Object.values(CATALOGUE).flatMap((part) => part.map(({ id }) => id.length)));
  const line = ({ id, title }: { id: string; title: string }): string => `  ${id.padEnd(longest)}  ${title}`;
  return [
    'exercises',
    ...CATALOGUE.exercises.map(line),
    'aeroplanes',
    ...CATALOGUE.aeroplanes.map(line),
    'aerodromes',
    ...CATALOGUE.aerodromes.map((a) => `${line(a)}, runways ${a.runways.join(' and ')}`),
    '',
  ].join('\n');
};
