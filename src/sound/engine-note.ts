/**
 * The engine as it is heard in the cockpit: two firings a revolution (four cylinders, four strokes), which is also
 * the beat of a two-bladed propeller, with a few harmonics through a low-pass filter that opens with power.
 */
export interface EngineNote {
  /** `engineRevps` of the crankshaft, `throttle` 0..1. */
  follow(engineRevps: number, throttle: number, atS: number): void;
  hush(atS: number): void;
  stop(): void;
}

const FIRINGS_PER_REV = 2;
/** Time constant of every change, so that nothing clicks. */
const SMOOTH_S = 0.06;

/** Strength of the harmonics of the firing frequency; common practice of synthesis, chosen by ear. */
const HARMONICS = new Float32Array([0, 1, 0.55, 0.3, 0.22, 0.12, 0.08, 0.05]);

export const createEngineNote = (context: AudioContext, out: AudioNode): EngineNote => {
  const note = context.createOscillator();
  note.setPeriodicWave(context.createPeriodicWave(HARMONICS, new Float32Array(HARMONICS.length)));
  const filter = context.createBiquadFilter();
  filter.type = 'lowpass';
  const level = context.createGain();
  level.gain.value = 0;
  note.connect(filter).connect(level).connect(out);
  note.start();
  return {
    follow: (engineRevps, throttle, atS) => {
      note.frequency.setTargetAtTime(Math.max(5, FIRINGS_PER_REV * engineRevps), atS, SMOOTH_S);
      filter.frequency.setTargetAtTime(220 + 900 * throttle, atS, SMOOTH_S);
      level.gain.setTargetAtTime(engineRevps > 2 ? 0.12 + 0.14 * throttle : 0, atS, SMOOTH_S);
    },
    hush: (atS) => level.gain.setTargetAtTime(0, atS, SMOOTH_S),
    stop: () => note.stop(),
  };
};
