import { followCoach } from '../../../flight/coach.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import { useStore } from '../../store.ts';
import { useProcedures } from '../card/shown-procedures.ts';
import type { ReadyFlight } from '../run/ready.ts';

/** Four times a simulated second: lets the coach look, shows what it says and keeps it with the flight. */
export const coachFlight = (
  flight: ReadyFlight,
  s: Readonly<Snapshot>,
  byHand: boolean,
  say: (text: string) => void,
): void => {
  // A demonstration is talked through as well; nobody who only watches is reminded of anything
  const chosen = useStore.getState().settings.coach;
  const level = byHand || chosen === 'talked-through' ? chosen : 'silent';
  const text = followCoach(flight, s, level, byHand);
  if (text !== null) say(text);
  const coach = flight.coach?.memory.text ?? '';
  if (useProcedures.getState().coach !== coach) useProcedures.setState({ coach });
};
