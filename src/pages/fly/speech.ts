import type { Snapshot } from '../../simulation/snapshot.ts';
import type { Voice } from '../../sound/voice.ts';
import { useStore } from '../store.ts';
import type { Announcer } from './announcer.ts';
import type { ReadyFlight } from './ready.ts';
import { useProcedures } from './shown-procedures.ts';

/** Coach and voice: fetched once the flight stands, because the first seconds need neither. */
export const createSpeech = (announcer: Announcer) => {
  let coachFlight: typeof import('./coach.ts').coachFlight | null = null;
  let voice: Voice | null = null;
  let heard = '';
  import('./coach.ts').then((loaded) => {
    coachFlight = loaded.coachFlight;
  }, noCoach);

  const speak = (text: string): void => {
    if (!useStore.getState().settings.voice) return;
    if (voice !== null) {
      voice.say(text);
      return;
    }
    import('../../sound/voice.ts').then((loaded) => {
      voice = loaded.createVoice();
      voice.say(text);
    }, noCoach);
  };

  return {
    /** Four times a simulated second. */
    follow: (flight: ReadyFlight, s: Readonly<Snapshot>, running: boolean): void => {
      const tower = useProcedures.getState().heard;
      if (tower !== heard) {
        heard = tower;
        speak(tower);
      }
      if (!running) return;
      coachFlight?.(flight, s, useStore.getState().pilot === 'hands', (text) => {
        announcer.say(text);
        speak(text);
      });
    },
  };
};

/** Without a network nothing is fetched: the flight goes on in silence. */
const noCoach = (): void => useStore.setState({ notice: 'Coach and voice did not load; they stay silent.' });
