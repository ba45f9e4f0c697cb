import { beginCoach, type CoachMemory, coach } from '../../../lesson/coach/coach.ts';
import { talkNow } from '../../../lesson/coach/talk.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import { useStore } from '../../store.ts';
import { useProcedures } from '../card/shown-procedures.ts';
import { lessonMemory, type ReadyFlight } from '../run/ready.ts';
import { tellFlight } from '../run/telling.ts';

let memory: CoachMemory = beginCoach();
let of: ReadyFlight | null = null;
let lastS = 0;
let toldLevel = '';

/** Four times a simulated second: lets the coach look, shows what it says and keeps it with the flight. */
export const coachFlight = (
  flight: ReadyFlight,
  s: Readonly<Snapshot>,
  byHand: boolean,
  say: (text: string) => void,
): void => {
  // Another flight, or this one set back
  if (of !== flight || s.timeS < lastS) {
    memory = beginCoach();
    toldLevel = '';
    of = flight;
  }
  lastS = s.timeS;
  // A demonstration is talked through as well; nobody who only watches is reminded of anything
  const chosen = useStore.getState().settings.coach;
  const level = byHand || chosen === 'talked-through' ? chosen : 'silent';
  if (byHand && level !== toldLevel) {
    toldLevel = level;
    tellFlight('coach', level);
  }
  const { teaching } = flight.scenario.aerodrome.circuit;
  const { lesson } = flight;
  const context = { m: lessonMemory(flight), lesson, s, limits: flight.limits, teaching };
  const text = coach(memory, context, level, talkNow);
  if (text !== null) {
    tellFlight('said', text);
    say(text);
  }
  if (useProcedures.getState().coach !== memory.text) useProcedures.setState({ coach: memory.text });
};
