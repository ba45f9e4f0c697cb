import { createPilot, refusal } from '../pilot/pilot.ts';
import type { ControlSource } from '../session/source.ts';
import { flyAnew, flyBranch, type Kept } from './branch.ts';
import { type StudyFlight, seeAgain } from './flown.ts';

/** The model pilot's flight, or why it would not fly this, in one sentence. */
export type ByModelPilot = { readonly flown: Kept } | { readonly refused: string };

/**
 * The same flight by the model pilot: same aeroplane, same wind, same gusts at the same time. From the beginning, or
 * from a time on with everything before it as it was flown.
 */
export const flyByModelPilot = (flight: StudyFlight, fromS: number | null = null): ByModelPilot => {
  const flown = seeAgain(flight);
  const refused = refusal(flown.model, flight.plan);
  if (refused !== null) return { refused };
  const pilot = createPilot(flown.model, flight.plan, null, flown.briefing) as ControlSource<unknown>;
  return { flown: fromS === null ? flyAnew(flown, pilot) : flyBranch(flown, pilot, fromS) };
};
