import type { Mark } from '../formats/attempt.ts';
import type { HelpUsed, Parent } from '../lesson/attempt.ts';
import type { Recording } from '../session/recording.ts';

/** What belongs to a flight and is not in its recording. */
export interface FlightAside {
  readonly help: HelpUsed;
  readonly marks: readonly Mark[];
}

/** Keeps a flight under way from second to second. */
export interface FlightJournal {
  readonly id: string;
  /** When the flight was begun. */
  readonly when: string;
  readonly pilot: string;
  readonly parent: Parent | null;
  /** Call it every frame: it writes when a second has been flown since it last did, and never waits. */
  note(recording: Recording, aside: FlightAside): void;
  /** Writes what there is: at a freeze, when the page is hidden. */
  flush(recording: Recording, aside: FlightAside): Promise<void>;
  /** The flight is over and not wanted: nothing is offered again. */
  end(): Promise<void>;
}

/** A flight whose tab was closed. */
export interface UnfinishedFlight {
  readonly id: string;
  readonly pilot: string;
  readonly when: string;
  readonly exercise: string;
  readonly aeroplane: string;
  readonly aerodrome: string;
  readonly runway: string;
  readonly flightS: number;
}

/** A flight gone on with: stand it at the recording's last step and fly. */
export interface FlightTakenUp {
  readonly recording: Recording;
  readonly aside: FlightAside;
  readonly journal: FlightJournal;
  /** A sentence for the user, or empty: another model version goes on from the last keyframe. */
  readonly says: string;
}
