import { headingDeg, wrapTwoPi } from '../../units/angles.ts';
import { degFromRad } from '../../units/conversions.ts';
import { headingDigits } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

const QUARTERS = ['N', 'E', 'S', 'W', 'N'] as const;

/** Magnetic, north at both ends; the runway and its reciprocal have their marks. */
export const heading = ribbonScale({
  id: 'heading',
  name: 'Heading',
  unit: '°',
  inCockpit: false,
  low: () => 0,
  high: () => 360,
  ticks: () => ticksEvery(0, 360, 45, (deg) => (deg % 90 === 0 ? (QUARTERS[deg / 90] ?? '') : '')),
  marks: ({ runway }) => [
    mark(degFromRad(wrapTwoPi(runway.headingRadM)), 'ink', 'the runway'),
    mark(degFromRad(wrapTwoPi(runway.headingRadM + Math.PI)), 'rule', 'downwind'),
  ],
  value: (snapshot, { runway }) => headingDeg(snapshot.headingRadT - runway.variationRad),
  text: (deg) => `${headingDigits(deg)}°`,
});
