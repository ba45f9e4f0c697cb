import { beginCoach, type CoachMemory, coach, type Talk } from '../../lesson/coach/coach.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { useStore } from '../store.ts';
import { lessonMemory, type ReadyFlight } from './ready.ts';
import { useProcedures } from './shown-procedures.ts';
import { tellFlight } from './telling.ts';

let memory: CoachMemory = beginCoach();
let of: ReadyFlight | null = null;
let lastS = 0;
let toldLevel = '';

let talk: Talk | null = null;
let asked = false;

/** The words of somebody who is talked through, fetched when that is chosen. */
const fetchTalk = (): void => {
  if (asked) return;
  asked = true;
  import('../../lesson/coach/talk.ts').then(
    (loaded) => {
      talk = loaded.talkNow;
    },
    () => {
      // Without a network the reminders go on; it is tried again with the next flight
      useStore.setState({ notice: 'The words to be talked through by did not load; reminders go on.' });
    },
  );
};

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
    asked = talk !== null;
    of = flight;
  }
  lastS = s.timeS;
  const level = byHand ? useStore.getState().settings.coach : 'silent';
  if (byHand && level !== toldLevel) {
    toldLevel = level;
    tellFlight('coach', level);
  }
  const { teaching } = flight.scenario.aerodrome.circuit;
  const { lesson } = flight;
  if (level === 'talked-through') fetchTalk();
  const context = { m: lessonMemory(flight), lesson, s, limits: flight.limits, teaching };
  const text = coach(memory, context, level, talk);
  if (text !== null) {
    tellFlight('said', text);
    say(text);
  }
  if (useProcedures.getState().coach !== memory.text) useProcedures.setState({ coach: memory.text });
};
