import { ribbonScale, type Setting } from './common.ts';

/** Shares of what one hand can hold, and the word from there up. Common practice has no numbers for them. */
export const PRESSURES = [
  { from: 0, word: 'none' },
  { from: 0.04, word: 'light' },
  { from: 0.25, word: 'firm' },
  { from: 0.6, word: 'heavy' },
  { from: 1, word: 'beyond one hand' },
] as const;

/** The word of a pressure given as a share of what one hand can hold; the sign says push or pull. */
export const pressureWords = (share: number): string => {
  const amount = Math.abs(share);
  let word: string = PRESSURES[0].word;
  for (const pressure of PRESSURES) if (amount >= pressure.from) word = pressure.word;
  if (word === 'none') return word;
  const way = share > 0 ? 'pull' : 'push';
  return word === 'beyond one hand' ? `${way}, ${word}` : `${word} ${way}`;
};

const limit = ({ aeroplane }: Setting): number => aeroplane.pitch.handLimitDegKpa;

/** What the hand holds against the trim; nothing when trimmed. In percent of what one hand can hold. */
export const heldPressure = ribbonScale({
  id: 'held',
  name: 'Held pressure',
  unit: '',
  inCockpit: false,
  low: () => -100,
  high: () => 100,
  arcs: () => [{ from: -4, to: 4, colour: 'corridor', row: 'whole', means: 'trimmed' }],
  ticks: () => [
    { at: -100, text: 'push' },
    { at: 0, text: '' },
    { at: 100, text: 'pull' },
  ],
  value: (snapshot, setting) => (100 * snapshot.heldPressureDegKpa) / limit(setting),
  text: (percent) => pressureWords(percent / 100),
});
