import { flownBy } from '../session/flown-by.ts';
import { tell } from '../session/session.ts';
import type { ControlSource } from '../session/source.ts';
import { DEMONSTRATION } from './demonstration-pilot.ts';
import { type Flight, ownAircraft } from './flight.ts';

const MODEL_PILOTS: ReadonlySet<string> = new Set(['model pilot', DEMONSTRATION]);

const isModelPilot = ({ name }: Pick<ControlSource<unknown>, 'name'>): boolean => MODEL_PILOTS.has(name);

/** Before a step: tells the flight who has the controls, where that has changed. */
export const noteWhoFlies = (flight: Flight): void => {
  const { source, recorder } = ownAircraft(flight);
  if (source === flight.flownBy) return;
  flight.flownBy = source;
  const now = isModelPilot(source) ? 'model' : 'pilot';
  if (flownBy(recorder.recording).last !== now) tell(flight.session, 0, 'flies', now);
};
