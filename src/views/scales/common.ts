import type { Mark, Scale, ScaleSetting, Tick } from './scale.ts';

/** What a scale must say of itself; the rest has plain answers. */
type Said = Pick<Scale, 'id' | 'name' | 'unit' | 'value' | 'text'> & Partial<Scale>;

const none = (): readonly never[] => [];
const nought = (): number => 0;
const always = (): boolean => true;

/** A scale with a ribbon; a cockpit has it unless it says otherwise. */
export const ribbonScale = (said: Said & Pick<Scale, 'low' | 'high'>): Scale => ({
  inCockpit: true,
  ribbon: true,
  aboard: always,
  title: () => said.name,
  arcs: none,
  ticks: none,
  marks: none,
  ...said,
});

/** A meter without ribbon: a number among the learning aids. */
export const plainMeter = (said: Said): Scale => ({
  inCockpit: false,
  ribbon: false,
  aboard: always,
  low: nought,
  high: nought,
  title: () => said.name,
  arcs: none,
  ticks: none,
  marks: none,
  ...said,
});

/** Ticks at every step from low to high, written by `text`. */
export const ticksEvery = (
  low: number,
  high: number,
  step: number,
  text: (at: number) => string,
): readonly Tick[] => {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const at = (first + i) * step;
    return { at, text: text(at) };
  });
};

export const mark = (at: number, colour: Mark['colour'], means: string): Mark => ({ at, colour, means });

/** Left or right with its amount: "5° right", and `nought` for 0. */
export const sided = (value: number, amount: string, unit: string, noughtText: string): string => {
  if (Number(amount) === 0) return noughtText;
  return `${amount}${unit} ${value > 0 ? 'right' : 'left'}`;
};

export type Setting = ScaleSetting;
