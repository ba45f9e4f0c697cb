import { fixed } from '../../units/format.ts';
import { mark, ribbonScale } from './common.ts';

/** The wheel's travel is counted in tenths either side of neutral. */
const TENTHS = 10;

export const trim = ribbonScale({
  id: 'trim',
  name: 'Trim',
  unit: '',
  inCockpit: false,
  low: () => -TENTHS,
  high: () => TENTHS,
  ticks: () => [
    { at: -TENTHS, text: 'down' },
    { at: 0, text: '' },
    { at: TENTHS, text: 'up' },
  ],
  marks: ({ aeroplane }) => [mark(aeroplane.pitch.trimTakeOff * TENTHS, 'corridor', 'take-off')],
  value: (snapshot) => snapshot.trim * TENTHS,
  text: (tenths) => {
    const amount = fixed(Math.abs(tenths), 1).replace('.0', '');
    return amount === '0' ? 'neutral' : `${amount} ${tenths > 0 ? 'up' : 'down'}`;
  },
});
