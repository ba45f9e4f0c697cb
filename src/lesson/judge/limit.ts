/** How far from its target a quantity may be. Every limit names its source; reference numbers of documents as published. */
export interface Limit {
  /** Below and above the target. */
  readonly below: number;
  readonly above: number;
  readonly source: string;
  /**
   * How sure the figure is: seen in the document or a copy of it, in a text that quotes it, remembered only, or
   * common practice without a document.
   */
  readonly sure: 'seen' | 'quoted' | 'memory' | 'practice' | 'own';
}

/** A limit that a row brings along: the same in every set until somebody changes it there. */
export interface CommonLimit extends Limit {
  /** How the editor of the tolerances calls it: "overshoot, m". */
  readonly title: string;
}

/** The limits that tests name figures for, so that they differ from set to set; as the editor calls them. */
export const DOCUMENT_LIMITS = {
  heightFt: 'height, ft',
  trackDeg: 'track, °',
  circuitSpeedKt: 'circuit speed, kt',
  climbSpeedKt: 'climb speed, kt',
  approachSpeedKt: 'approach speed, kt',
  /** Beyond the specified point. */
  touchdownFt: 'touchdown, ft',
  shortTouchdownFt: 'short touchdown, ft',
} as const;

export type DocumentLimits = Readonly<Record<keyof typeof DOCUMENT_LIMITS, Limit>>;

/** What a row gets to judge by: the documents' limits, and those that it brings along. */
export type LimitsWith<K extends string> = DocumentLimits & Readonly<Record<K, Limit>>;

export const PRACTICE = 'common practice';

export const practice = (below: number, above: number, what = ''): Limit => ({
  below,
  above,
  source: what === '' ? PRACTICE : `${PRACTICE}: ${what}`,
  sure: 'practice',
});
