import { fpmFromMps } from '../../units/conversions.ts';
import { signed, thousands, thousandsTo } from '../../units/format.ts';
import { mark, ribbonScale, ticksEvery } from './common.ts';

const MOST_FPM = 1200;
const STEP_FPM = 500;

/** As the lagging instrument shows it; up is to the right. */
export const verticalSpeed = ribbonScale({
  id: 'vertical-speed',
  name: 'Vertical speed',
  unit: 'ft/min',
  low: () => -MOST_FPM,
  high: () => MOST_FPM,
  ticks: () =>
    ticksEvery(-MOST_FPM, MOST_FPM, STEP_FPM, (fpm) =>
      fpm === 0 ? '0' : `${fpm > 0 ? '+' : ''}${thousands(fpm)}`,
    ),
  marks: () => [mark(0, 'inkSoft', 'level')],
  value: (snapshot) => fpmFromMps(snapshot.indicatedVerticalSpeedMps),
  text: (fpm) => {
    const tens = Math.round(fpm / 10) * 10;
    return `${tens > 0 ? '+' : ''}${tens === 0 ? signed(0) : thousandsTo(tens, 10)} ft/min`;
  },
});
