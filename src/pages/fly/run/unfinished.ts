import type { FlightAside } from '../../../storage/logbook.ts';
import type { HandOver } from '../../hand-over.ts';
import { theLogbook } from '../../logbook-here.ts';
import { useStore } from '../../store.ts';

let looked = false;

/** Once a visit: flights whose tab was closed are offered, as long as nothing else has been begun. */
export const offerUnfinished = async (): Promise<void> => {
  if (looked) return;
  looked = true;
  const book = await theLogbook().catch((error: unknown) => {
    looked = false;
    throw error;
  });
  const unfinished = (await book.unfinished()).filter((flight) => flight.goesOn);
  const { begun, sheet } = useStore.getState();
  if (unfinished.length === 0 || begun || (sheet !== null && sheet !== 'start')) return;
  useStore.setState({ unfinished, sheet: 'unfinished' });
};

export const forgetUnfinished = async (id: string): Promise<void> => {
  useStore.setState((s) => ({ unfinished: s.unfinished.filter((flight) => flight.id !== id) }));
  await (await theLogbook()).discard(id);
};

/** Takes one from the shelf; null when another tab has it by now. `asideNow` is asked at each write from then on. */
export const takeUpUnfinished = async (
  id: string,
  asideNow: (before: FlightAside) => FlightAside,
): Promise<HandOver | null> => {
  const taken = await (await theLogbook()).takeUp(id, asideNow);
  if (taken === null) return null;
  const { recording, aside, journal } = taken;
  const { help } = aside;
  return { kind: 'taken-up', recording, atStep: recording.steps, parent: journal.parent, help, journal };
};
