import { hasProcedures, tellFlight } from '../../../flight/run.ts';
import type { PilotEvent } from '../../../simulation/pilot-event.ts';
import { flightCommands } from './commands.ts';
import type { ReadyFlight } from './ready.ts';

/** The flight that is shown: ticks, calls and looks go into its recording. */
export const flightShown = (): ReadyFlight | null => flightCommands()?.shown() ?? null;

/** Something done beside the controls of the flight that is shown; its next step takes it. */
export const tellShown = (kind: PilotEvent['kind'], value: string): void => {
  const flight = flightShown();
  if (flight !== null) tellFlight(flight, kind, value);
};

/** Checks, calls and lookout belong to the flight that is shown. */
export const shownHasProcedures = (): boolean => {
  const flight = flightShown();
  return flight !== null && hasProcedures(flight);
};
