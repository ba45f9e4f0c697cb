import { fixed } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

export const loadFactor = ribbonScale({
  id: 'load',
  name: 'Load factor',
  unit: 'g',
  inCockpit: false,
  low: () => 0,
  high: ({ aeroplane }) => Math.ceil(aeroplane.limits.loadFactor),
  ticks: ({ aeroplane }) => ticksEvery(0, aeroplane.limits.loadFactor, 1, (g) => fixed(g)),
  marks: ({ aeroplane }) => [mark(aeroplane.limits.loadFactor, 'arcRed', 'limit load factor')],
  value: (snapshot) => snapshot.loadFactor,
  text: (g) => `${fixed(g, 1)} g`,
});
