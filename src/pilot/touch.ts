import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** What a way of flying asks for on top of a normal round-out and roll. */
type Touch = (m: PilotMemory, v: Readonly<PilotView>) => void;

const TRICKLE = 0.15; // tuned
const BELOW_M = 3; // tuned
const BACK = 0.6; // tuned

/** A trickle of power until the wheels are down; then the nose wheel off as long as it will stay, and no brakes. */
const softly: Touch = (m, v) => {
  if (m.phase === 'round-out' && v.clearanceM < BELOW_M)
    m.hands.throttle = Math.max(m.hands.throttle, TRICKLE);
  if (m.phase !== 'landing-roll') return;
  m.hands.brake = 0;
  if (v.onGround && !v.noseWheelOnGround) m.hands.elevator = BACK;
};

/** The end of a glide is flown without power too; after going round it is a landing like any other. */
const withoutPower: Touch = (m) => {
  if (m.phase === 'round-out' && m.goArounds === 0) m.hands.throttle = 0;
};

const TOUCHES: Partial<Record<Briefing['task']['technique'], Touch>> = {
  'soft-field': softly,
  glide: withoutPower,
};

/** Call after the phase, before the levers. */
export const touchOf = (b: Briefing): Touch => TOUCHES[b.task.technique] ?? plain;
const plain: Touch = () => {};
