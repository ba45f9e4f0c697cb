import type { Controls } from '../../../simulation/controls.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import type { Scale, ScaleSetting } from '../../../views/scales/scale.ts';

/**
 * Values that change every frame, written straight into the page. The pointer follows every frame; the text and
 * the meter's aria values follow each quarter of a second of simulated time.
 */
export interface MeterParts {
  readonly scale: Scale;
  readonly meter: HTMLElement;
  readonly text: HTMLElement;
  readonly pointer: HTMLElement | null;
}

/** Steps between two texts: 0.25 s at 60 steps a second. */
const TEXT_STEPS = 15;

export const clockId = 'flight-clock';

export const fractionOf = (value: number, low: number, high: number): number =>
  high > low ? Math.min(1, Math.max(0, (value - low) / (high - low))) : 0;

interface Shown {
  readonly parts: MeterParts;
  fraction: number;
  words: string;
  number: string;
}

/** The meters of the page; components come and go, the flight writes. */
export const createMeters = () => {
  const shown = new Map<string, Shown>();
  const extras = new Set<(controls: Readonly<Controls>) => void>();
  let textStep = -1;

  const writeText = (entry: Shown, value: number, setting: ScaleSetting) => {
    const { scale, meter, text } = entry.parts;
    const number = String(Math.round(value * 100) / 100);
    if (number !== entry.number) {
      entry.number = number;
      meter.setAttribute('aria-valuenow', number);
    }
    const words = scale.text(value, setting);
    if (words === entry.words) return;
    entry.words = words;
    text.textContent = words;
    meter.setAttribute('aria-valuetext', words);
  };

  return {
    add: (parts: MeterParts): (() => void) => {
      shown.set(parts.scale.id, { parts, fraction: -1, words: '', number: '' });
      textStep = -1;
      return () => {
        if (shown.get(parts.scale.id)?.parts === parts) shown.delete(parts.scale.id);
      };
    },
    /** Something else that follows each quarter of a second, from where the levers stand. */
    addText: (write: (controls: Readonly<Controls>) => void): (() => void) => {
      extras.add(write);
      textStep = -1;
      return () => extras.delete(write);
    },
    /** Every frame; `step` is the last whole step. */
    write: (
      snapshot: Readonly<Snapshot>,
      controls: Readonly<Controls>,
      step: number,
      setting: ScaleSetting,
    ): void => {
      const withText = textStep < 0 || step < textStep || step >= textStep + TEXT_STEPS;
      if (withText) textStep = step - (step % TEXT_STEPS);
      for (const entry of shown.values()) {
        const { scale, pointer } = entry.parts;
        if (!pointer && !withText) continue;
        const value = scale.value(snapshot, setting);
        if (withText) writeText(entry, value, setting);
        if (!pointer) continue;
        const fraction = fractionOf(value, scale.low(setting), scale.high(setting));
        if (Math.abs(fraction - entry.fraction) < 0.001) continue;
        entry.fraction = fraction;
        pointer.style.transform = `translateX(${(fraction * 100).toFixed(1)}%)`;
      }
      if (withText) for (const write of extras) write(controls);
    },
    /** Writes everything at the next frame, for instance after a step back. */
    refresh: (): void => {
      textStep = -1;
    },
  };
};

export type Meters = ReturnType<typeof createMeters>;

export const meters: Meters = createMeters();
