/** The stall warner: one steady, piercing tone, on or off. What it says is also seen (the scales show it). */
export interface WarnerTone {
  set(on: boolean, atS: number): void;
  stop(): void;
}

const TONE_HZ = 1400;
const SMOOTH_S = 0.01;

export const createWarnerTone = (context: AudioContext, out: AudioNode, toneHz = TONE_HZ): WarnerTone => {
  const tone = context.createOscillator();
  tone.type = 'square';
  tone.frequency.value = toneHz;
  const level = context.createGain();
  level.gain.value = 0;
  tone.connect(level).connect(out);
  tone.start();
  return {
    set: (on, atS) => level.gain.setTargetAtTime(on ? 0.05 : 0, atS, SMOOTH_S),
    stop: () => tone.stop(),
  };
};
