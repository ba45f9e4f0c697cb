import { ftFromM } from '../../units/conversions.ts';
import { fixed, thousands, thousandsTo } from '../../units/format.ts';
import { mark, ribbonScale, type Setting, ticksEvery } from './common.ts';

const elevationFt = ({ runway }: Setting): number => ftFromM(runway.thresholdElevationM);
const circuitFt = ({ runway }: Setting): number => ftFromM(runway.circuitHeightM);
const low = (setting: Setting): number => Math.floor(elevationFt(setting) / 100) * 100;
const high = (setting: Setting): number =>
  Math.ceil((elevationFt(setting) + circuitFt(setting) * 1.3) / 100) * 100;

/** Altitude on the QNH that is set; the circuit's altitude has its mark. */
export const altitude = ribbonScale({
  id: 'altitude',
  name: 'Altitude',
  unit: 'ft',
  title: ({ weather }) => `Altitude, QNH ${fixed(weather.qnhHpa)}`,
  low,
  high,
  ticks: (setting) => ticksEvery(low(setting), high(setting), 500, (ft) => thousands(ft)),
  marks: (setting) => [
    mark(elevationFt(setting), 'ink', 'the threshold'),
    mark(elevationFt(setting) + circuitFt(setting), 'corridor', 'circuit altitude'),
  ],
  value: (snapshot) => ftFromM(snapshot.altitudeM),
  text: (ft) => `${thousandsTo(ft, 10)} ft`,
});
