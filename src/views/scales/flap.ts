import { fixed } from '../../units/format.ts';
import { ribbonScale, type Setting } from './common.ts';

const mostDeg = ({ aeroplane }: Setting): number =>
  Math.max(1, ...aeroplane.flap.stages.map((stage) => stage.deg));

/** Where the flap is, not where its lever is. */
export const flap = ribbonScale({
  id: 'flap',
  name: 'Flap',
  unit: '°',
  inCockpit: false,
  low: () => 0,
  high: mostDeg,
  ticks: ({ aeroplane }) => aeroplane.flap.stages.map((stage) => ({ at: stage.deg, text: fixed(stage.deg) })),
  value: (snapshot) => snapshot.flapDeg,
  text: (deg) => (deg < 0.05 ? 'up' : `${fixed(deg)}°`),
});
