import type { Band, Outcome } from '../judge/report.ts';
import type { LegName } from '../names.ts';

/** How loud the coach was. */
export const COACH_WORDS = ['talked-through', 'reminded', 'silent'] as const;
/** How much was shown: everything; the cockpit with the plan on a held key; the cockpit alone. */
export const PICTURES = ['whiteboard', 'cockpit-with-plan', 'cockpit'] as const;

/** How much help there was; stored with every attempt. */
export interface HelpUsed {
  readonly coach: (typeof COACH_WORDS)[number];
  readonly picture: (typeof PICTURES)[number];
  readonly rudderAssist: boolean;
  /** The hand held the attitude; otherwise the keys moved the stick. */
  readonly handHolds: boolean;
  readonly freezes: number;
  readonly stepsBack: number;
  /** How often the plan was looked at on its held key. */
  readonly planLooks: number;
  /** Seconds flown by the model pilot. */
  readonly watchedS: number;
}

/** Nothing but the cockpit, nothing said, nothing stopped: what a "ready" may rest on. */
export const isUnaided = (help: HelpUsed): boolean =>
  help.picture === 'cockpit' &&
  help.coach === 'silent' &&
  help.freezes === 0 &&
  help.stepsBack === 0 &&
  help.planLooks === 0 &&
  help.watchedS === 0;

/** One judged item of an attempt, as lists and trends need it. */
export interface ItemNumber {
  readonly id: string;
  readonly circuit: number;
  readonly leg: LegName;
  readonly value: number | null;
  readonly unit: string;
  readonly target: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly band: Band;
}

/** The attempt that this one branched off, and the second of its flight where it did. */
export interface Parent {
  readonly id: string;
  readonly atS: number;
}

/** An attempt as lists, search and trends see it: everything but the flight itself. */
export interface AttemptRow {
  readonly id: string;
  readonly pilot: string;
  /** When the flight was begun: `2026-01-31T09:30:00.000Z`. */
  readonly when: string;
  readonly exercise: string;
  /** The leg it began on, `line-up` too; not there in rows of earlier versions, null where the start was given as a file. */
  readonly from?: string | null;
  readonly aeroplane: string;
  readonly aerodrome: string;
  readonly runway: string;
  /** `220/15g25`. */
  readonly wind: string;
  readonly turbulence: string;
  readonly outcome: Outcome;
  readonly why: string;
  /** What to look at first, as on the card; not there in rows of earlier versions, empty where nothing is outside. */
  readonly first?: string;
  readonly flightS: number;
  readonly items: readonly ItemNumber[];
  /** Safety stops, in words. */
  readonly safety: readonly string[];
  /** Why a go-around was due that was not flown. */
  readonly missedGoArounds: readonly string[];
  readonly help: HelpUsed;
  /** By the instructor. */
  readonly notes: string;
  /** The student's own words before anything was shown. */
  readonly ownView: readonly string[];
  readonly parent: Parent | null;
  /** Kept to be looked at again: the model pilot flew it, or ended it, and it is nobody's attempt. */
  readonly demonstration?: boolean;
  /** From when on it was the pilot's own; 0 or absent: from the beginning. */
  readonly theirsFromS?: number;
  readonly modelVersion: number;
  /** What the flight takes in storage. */
  readonly sizeBytes: number;
  /** When it was deleted; null: it was not. It can be had back until it is purged. */
  readonly deletedAt: string | null;
}
