import { degFromRad } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { plainMeter, sided } from './common.ts';

export const pitch = plainMeter({
  id: 'pitch',
  name: 'Pitch',
  unit: '°',
  value: (snapshot) => degFromRad(snapshot.pitchRad),
  text: (deg) => {
    const amount = fixed(Math.abs(deg), 1);
    return Number(amount) === 0 ? 'level' : `${amount}° ${deg > 0 ? 'up' : 'down'}`;
  },
});

export const bank = plainMeter({
  id: 'bank',
  name: 'Bank',
  unit: '°',
  value: (snapshot) => degFromRad(snapshot.bankRad),
  text: (deg) => sided(deg, fixed(Math.abs(deg)), '°', 'level'),
});
