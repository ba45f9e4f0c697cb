import type { Snapshot } from '../../../simulation/snapshot.ts';
import type { Voice } from '../../../sound/voice.ts';
import { fetchPart } from '../../parts/fetch-part.ts';
import { useStore } from '../../store.ts';
import { useProcedures } from '../card/shown-procedures.ts';
import type { ReadyFlight } from '../run/ready.ts';
import type { Announcer } from './announcer.ts';

type Beside = typeof import('./beside.ts');

let beside: Beside | null = null;

/** Checks, calls and coach, once they have been fetched. */
export const besideNow = (): Beside | null => beside;

/** Without a network nothing is fetched: the flight goes on in silence. */
const nothingCame = (): void =>
  useStore.setState({ notice: 'Checks, calls and coach did not load; this flight goes on without.' });

/** Shows checks and calls, lets coach and voice speak; all of it fetched while the flight is made ready. */
export const createSpeech = (announcer: Announcer) => {
  let voice: Voice | null = null;
  let heard = '';
  let spoken = '';
  let level = '';
  fetchPart('pages/fly/said/beside.ts', () => import('./beside.ts')).then((loaded) => {
    beside = loaded;
  }, nothingCame);

  const speak = (text: string): void => {
    if (!useStore.getState().settings.voice) return;
    if (voice !== null) {
      voice.say(text);
      return;
    }
    fetchPart('sound/voice.ts', () => import('../../../sound/voice.ts')).then((loaded) => {
      voice = loaded.createVoice();
      voice.say(text);
    }, nothingCame);
  };

  return {
    /** Four times a simulated second. */
    follow: (flight: ReadyFlight, s: Readonly<Snapshot>, running: boolean): void => {
      const { coach } = useStore.getState().settings;
      // The key that silences cuts the sentence short
      if (coach === 'silent' && level !== 'silent') voice?.hush();
      level = coach;
      beside?.showInstruction(flight, s.timeS, announcer, speak);
      beside?.showProcedures(flight, announcer);
      const { heard: tower, spoken: words } = useProcedures.getState();
      if (words !== spoken) {
        spoken = words;
        speak(words);
      }
      if (tower !== heard) {
        heard = tower;
        speak(tower);
      }
      if (!running) return;
      beside?.coachFlight(flight, s, useStore.getState().pilot === 'hands', (text) => {
        announcer.say(text);
        speak(text);
      });
    },
  };
};
