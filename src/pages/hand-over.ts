import type { HelpUsed, Parent } from '../lesson/attempts/attempt.ts';
import type { Recording } from '../session/recording.ts';
import type { Scenario } from '../simulation/scenario.ts';
import type { FlightJournal } from '../storage/logbook.ts';

/** A flight that another page hands to the flying page. */
export type HandOver =
  /** From its beginning. */
  | { readonly kind: 'anew'; readonly scenario: Scenario }
  /** Another way on from an instant of an attempt. */
  | {
      readonly kind: 'branch';
      readonly recording: Recording;
      readonly atStep: number;
      readonly parent: Parent;
      readonly help: HelpUsed;
    }
  /** A flight whose tab was closed, gone on with where it stood. */
  | {
      readonly kind: 'taken-up';
      readonly recording: Recording;
      readonly atStep: number;
      readonly parent: Parent | null;
      readonly help: HelpUsed;
      readonly journal: FlightJournal;
    };

let waiting: HandOver | null = null;

/** Lays a flight ready for the flying page, which takes it when it opens. */
export const handOver = (flight: HandOver): void => {
  waiting = flight;
};

/** The flight that waits, once. */
export const takeHandOver = (): HandOver | null => {
  const flight = waiting;
  waiting = null;
  return flight;
};
