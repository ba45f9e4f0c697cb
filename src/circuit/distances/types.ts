/**
 * A distance over 50 ft with its margin, by the model and by the usual factors; metres as they are shown, so that
 * each product is that of the figures beside it.
 */
export interface RunBrief {
  /** The part of it on the ground, by the model. */
  readonly groundRunM: number;
  /** Solved from the model in today's air, wind, surface and slope. */
  readonly modelM: number;
  /** Model, standard day at sea level, level dry tarmac, no wind: what the factors multiply. */
  readonly standardM: number;
  readonly factors: readonly { readonly name: string; readonly factor: number }[];
  readonly byFactorsM: number;
  readonly margin: number;
  /** The longer of the two with it. */
  readonly withMarginM: number;
  readonly availableM: number;
  /** It is there. */
  readonly fits: boolean;
}

export interface RunsBrief {
  readonly takeOff: RunBrief;
  readonly landing: RunBrief;
  readonly source: string;
}
