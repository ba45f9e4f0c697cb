import { hpaFromPa, inHgFromHpa } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

const LOW_INHG = 8;
const HIGH_INHG = 32;

/** Manifold pressure: the power of an engine whose rpm the propeller governs. */
export const manifold = ribbonScale({
  id: 'manifold',
  name: 'Manifold',
  unit: 'in',
  aboard: ({ aeroplane }) => aeroplane.equipment.propellerLever,
  low: () => LOW_INHG,
  high: () => HIGH_INHG,
  ticks: () => ticksEvery(LOW_INHG + 2, HIGH_INHG - 2, 5, (inHg) => fixed(inHg)),
  marks: ({ aeroplane: { plan } }) =>
    plan.baseManifoldInHg === undefined ? [] : [mark(plan.baseManifoldInHg, 'corridor', 'power on base')],
  value: (snapshot) => inHgFromHpa(hpaFromPa(snapshot.manifoldPa)),
  text: (inHg) => `${fixed(inHg, 1)} in`,
});
