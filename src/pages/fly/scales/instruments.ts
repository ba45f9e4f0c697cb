import { create } from 'zustand';
import type { Scale, ScaleSetting } from '../../../views/scales/scale.ts';
import type { CardSetting } from '../card/card-data.ts';

/** The scales and the card of the aeroplane that stands ready; they change only with the flight. */
export interface Instruments {
  readonly scales: readonly Scale[];
  readonly setting: ScaleSetting;
  readonly card: CardSetting;
  /** Of the slope lights, as they are named: "3°". */
  readonly lightsAngle: string;
}

const useHeld = create<{ readonly instruments: Instruments | null }>()(() => ({ instruments: null }));

export const setInstruments = (instruments: Instruments | null): void => useHeld.setState({ instruments });

export const useInstruments = (): Instruments | null => useHeld((s) => s.instruments);

export const useCardSetting = (): CardSetting | null => useHeld((s) => s.instruments?.card ?? null);

/** Outside of React. */
export const instrumentsNow = (): Instruments | null => useHeld.getState().instruments;
