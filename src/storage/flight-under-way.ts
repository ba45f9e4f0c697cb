import type { Mark } from '../formats/attempt.ts';
import type { HelpUsed, Parent } from '../lesson/attempts/attempt.ts';
import type { Recording } from '../session/recording.ts';

/** What belongs to a flight and is not in its recording. */
export interface FlightAside {
  readonly help: HelpUsed;
  readonly marks: readonly Mark[];
}

/** What is known of a flight when it begins. */
export interface FlightHead {
  readonly id: string;
  readonly pilot: string;
  readonly when: string;
  readonly parent: Parent | null;
  readonly version: number;
  readonly modelVersion: number;
  readonly scenario: Recording['scenario'];
}

/** What changes with every write and is small. */
export interface FlightState extends FlightAside {
  readonly id: string;
  readonly steps: number;
}
