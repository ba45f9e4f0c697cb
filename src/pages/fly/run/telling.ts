import { tell } from '../../../session/session.ts';
import type { PilotEvent } from '../../../simulation/pilot-event.ts';
import { lessonMemory, type ReadyFlight } from './ready.ts';

/** The flight that is shown: ticks, calls and looks go into its recording. */
let shown: ReadyFlight | null = null;

export const showFlight = (flight: ReadyFlight | null): void => {
  shown = flight;
};

export const flightShown = (): ReadyFlight | null => shown;

/** Something done beside the controls; the next step takes it. */
export const tellFlight = (kind: PilotEvent['kind'], value: string): void => {
  if (shown) tell(shown.session, 0, kind, value);
};

/** Checks, calls and lookout belong to this flight. */
export const hasProcedures = (): boolean => (shown ? lessonMemory(shown).procedures !== null : false);
