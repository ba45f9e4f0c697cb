import { ribbonScale } from './common.ts';

/** Lateral acceleration, g, at which the ball is said to be off; half a ball is about 0.05 (common practice). */
const CENTRED_G = 0.02;
const SLIGHT_G = 0.06;
const FAR_G = 0.12;
const MOST_G = 0.2;

/** The ball: it lies on the side to which the pedal must be pushed. */
export const slip = ribbonScale({
  id: 'slip',
  name: 'Slip',
  unit: '',
  low: () => -MOST_G,
  high: () => MOST_G,
  arcs: () => [{ from: -CENTRED_G, to: CENTRED_G, colour: 'corridor', row: 'whole', means: 'balanced' }],
  ticks: () => [
    { at: -MOST_G, text: 'left' },
    { at: 0, text: '' },
    { at: MOST_G, text: 'right' },
  ],
  value: (snapshot) => snapshot.ball,
  text: (ball) => {
    const amount = Math.abs(ball);
    if (amount < CENTRED_G) return 'centred';
    const side = ball > 0 ? 'right' : 'left';
    if (amount < SLIGHT_G) return `ball slightly ${side}`;
    return amount < FAR_G ? `ball ${side}` : `ball far ${side}`;
  },
});
