/**
 * How somebody flies, told as what differs from the model pilot. With every entry as in `AS_PLANNED` it is the
 * model pilot. Plain data.
 */
export interface Style {
  /** Metres along the leg before, later than the model pilot begins the turn; negative: earlier. */
  readonly turnLateM: { readonly downwind: number; readonly base: number; readonly final: number };
  /** Never steeper than this in the turn to final; null: as it comes. */
  readonly finalBankRad: number | null;
  /** Held beside the planned speed. */
  readonly fasterMps: { readonly downwind: number; readonly base: number; readonly final: number };
  /** The track that is held instead of the line, counted from the leg's own; null: the line is held. */
  readonly trackOffRad: {
    readonly downwind: number | null;
    readonly base: number | null;
    readonly final: number | null;
  };
  /** Held beside circuit height. */
  readonly higherM: number;
  /** Later along the circuit than planned. */
  readonly descentLateM: number;
  /** Power that is set and left, whatever the slope says; null: power for the sink that is wanted. */
  readonly setThrottle: {
    readonly downwind: number | null;
    readonly base: number | null;
    readonly final: number | null;
  };
  /** No more flap than this; null: as planned. */
  readonly mostFlap: {
    readonly downwind: number | null;
    readonly base: number | null;
    readonly final: number | null;
  };
  /** The trim wheel stays here from abeam on, and the hand holds no more than so much; null: trimmed. */
  readonly untrimmed: { readonly wheel: number; readonly mostDegKpa: number } | null;
}

export const AS_PLANNED: Style = {
  turnLateM: { downwind: 0, base: 0, final: 0 },
  finalBankRad: null,
  fasterMps: { downwind: 0, base: 0, final: 0 },
  trackOffRad: { downwind: null, base: null, final: null },
  higherM: 0,
  descentLateM: 0,
  setThrottle: { downwind: null, base: null, final: null },
  mostFlap: { downwind: null, base: null, final: null },
  untrimmed: null,
};

/** The legs on which a style is kept. */
export type StyleLeg = 'downwind' | 'base' | 'final';

export const isStyleLeg = (name: string): name is StyleLeg =>
  name === 'downwind' || name === 'base' || name === 'final';
