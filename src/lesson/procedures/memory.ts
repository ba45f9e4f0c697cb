export const LIST_IDS = [
  'before-take-off',
  'after-take-off',
  'downwind',
  'final',
  'go-around',
  'after-landing',
] as const;
export type ListId = (typeof LIST_IDS)[number];

export const CALL_IDS = ['ready', 'downwind', 'base', 'final', 'going-around', 'vacated'] as const;
export type CallId = (typeof CALL_IDS)[number];

/** One item of a check as it is being done. */
export interface ItemFact {
  readonly id: string;
  doneS: number | null;
  /** Since when it has been worked on. */
  workS: number | null;
  /** What the item itself keeps: revs before, ways moved so far. */
  kept: number;
  /** How often it was ticked while the control stood otherwise. */
  wrong: number;
  /** What was found: "rpm fell by 90", "no pressure". */
  note: string;
}

/** One check, from where it belongs to where it must be done. */
export interface ListFact {
  readonly list: ListId;
  readonly circuit: number;
  readonly openS: number;
  closedS: number | null;
  /** The flight took another way: nothing to judge. */
  interrupted: boolean;
  items: ItemFact[];
  /** Heads in, from the first item to the last, without longer breaks. */
  headsFromS: number | null;
  lastActS: number;
  heightM: number;
  headingRad: number;
  /** Furthest from height and heading of that moment. */
  heightLostM: number;
  headingLostRad: number;
}

/** A call that was due or made; `choice` 0 is the right wording. */
export interface CallFact {
  readonly call: CallId;
  readonly circuit: number;
  dueS: number | null;
  /** When its place was passed without it. */
  lateS: number | null;
  closedS: number | null;
  saidS: number | null;
  choice: number | null;
}

/** What a tower shows to one who cannot hear it. */
export const LIGHT_IDS = ['green-flashes', 'green-light', 'red-light'] as const;
export type LightId = (typeof LIGHT_IDS)[number];

export const ANSWER_IDS = [
  'cleared-take-off',
  'report-final',
  'follow',
  'number-two',
  'extend',
  'orbit',
  'continue',
  'cleared-land',
  'go-around',
  ...LIGHT_IDS,
] as const;
export type AnswerId = (typeof ANSWER_IDS)[number];

/** A light says nothing that could be read back. */
export const isReadBack = (answer: AnswerId): boolean => !(LIGHT_IDS as readonly AnswerId[]).includes(answer);

/** Something the tower said; `choice` 0 is the right answer. */
export interface AnswerFact {
  readonly answer: AnswerId;
  readonly circuit: number;
  readonly heardS: number;
  readS: number | null;
  choice: number | null;
}

export interface LookFact {
  readonly atS: number;
  /** Right of the nose. */
  readonly deg: number;
}

/** Another aeroplane as it was last seen or told. */
export interface OtherFact {
  atS: number;
  eastM: number;
  northM: number;
  heightM: number;
  onGround: boolean;
}

export interface NearestFact {
  readonly circuit: number;
  metres: number;
  atS: number;
}

/** Everything beside the flying: plain data of the lesson's memory. */
export interface ProcedureMemory {
  lists: ListFact[];
  calls: CallFact[];
  answers: AnswerFact[];
  /** What the tower is about to say. */
  coming: { readonly answer: AnswerId; readonly atS: number }[];
  /** How many instructions of the task the tower has given. */
  instructed: number;
  looks: LookFact[];
  subscaleHpa: number;
  clearedToTakeOff: boolean;
  clearedToLand: boolean;
  /** Runway used without a clearance. */
  uncleared: { readonly circuit: number; readonly atS: number; readonly what: string }[];
  others: OtherFact[];
  nearest: NearestFact[];
  coach: string;
  said: { readonly atS: number; readonly text: string }[];
}
