import type { Snapshot } from '../simulation/snapshot.ts';
import { createEngineNote, type EngineNote } from './engine-note.ts';
import { createWarnerTone, type WarnerTone } from './warner-tone.ts';

/** Everything that is heard. Silent until asked for; hushed while the flight stands still. */
export interface FlightSound {
  /** Browsers let sound begin only from a press of the user: call it from one. */
  set(on: boolean): void;
  follow(snapshot: Readonly<Snapshot>, running: boolean): void;
  hush(): void;
  destroy(): void;
}

interface Instruments {
  readonly context: AudioContext;
  readonly engine: EngineNote;
  readonly warner: WarnerTone;
  /** Of the gear: lower, and in beats. */
  readonly horn: WarnerTone;
}

const HORN_HZ = 620;
const BEAT_S = 0.4;

const beats = (on: boolean, timeS: number): boolean => on && timeS % (2 * BEAT_S) < BEAT_S;

const start = (): Instruments => {
  const context = new AudioContext();
  const out = context.createGain();
  out.gain.value = 0.8;
  out.connect(context.destination);
  return {
    context,
    engine: createEngineNote(context, out),
    warner: createWarnerTone(context, out),
    horn: createWarnerTone(context, out, HORN_HZ),
  };
};

export const createFlightSound = (): FlightSound => {
  let playing: Instruments | null = null;
  let hushed = true;
  const hush = () => {
    if (!playing || hushed) return;
    hushed = true;
    playing.engine.hush(playing.context.currentTime);
    playing.warner.set(false, playing.context.currentTime);
    playing.horn.set(false, playing.context.currentTime);
  };
  return {
    set: (on) => {
      if (on && !playing) playing = start();
      if (!on && playing) {
        void playing.context.close();
        playing = null;
      }
      hushed = true;
    },
    follow: (snapshot, running) => {
      if (!playing) return;
      if (!running) {
        hush();
        return;
      }
      hushed = false;
      const now = playing.context.currentTime;
      playing.engine.follow(snapshot.engineRevps, snapshot.throttle, now);
      playing.warner.set(snapshot.warner, now);
      playing.horn.set(beats(snapshot.gearWarning, snapshot.timeS), now);
    },
    hush,
    destroy: () => {
      if (playing) void playing.context.close();
      playing = null;
    },
  };
};
