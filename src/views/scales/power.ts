import { rpmFromRevps } from '../../units/conversions.ts';
import { thousands, thousandsTo } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

/** Engine speed, with the limit and the power of the base leg. */
export const power = ribbonScale({
  id: 'rpm',
  name: 'Power',
  title: ({ aeroplane }) => (aeroplane.equipment.propellerLever ? 'Engine speed' : 'Power'),
  unit: 'rpm',
  low: () => 0,
  high: ({ aeroplane }) => aeroplane.limits.maximumRpm * 1.06,
  ticks: ({ aeroplane }) =>
    ticksEvery(500, aeroplane.limits.maximumRpm, 500, (rpm) => (rpm % 1000 === 0 ? thousands(rpm) : '')),
  marks: ({ aeroplane }) => [
    mark(aeroplane.limits.maximumRpm, 'arcRed', 'red line: highest engine speed'),
    mark(
      aeroplane.plan.baseRpm,
      'corridor',
      aeroplane.equipment.propellerLever ? 'rpm in the circuit' : 'power on base',
    ),
  ],
  value: (snapshot) => rpmFromRevps(snapshot.engineRevps),
  text: (rpm) => `${thousandsTo(rpm, 10)} rpm`,
});
