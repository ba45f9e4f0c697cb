import { clamp } from '../maths/functions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { neededMps2 } from './legs/landing-roll.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** What a way of flying asks for on top of a normal round-out and roll. */
type Touch = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>) => void;

const TRICKLE = 0.45; // tuned
const TRICKLING_M = 100; // tuned
const LEAST_SHARE = 0.3; // tuned
const BELOW_M = 3; // tuned
const STOPPING_M = 150; // our choice: the last of the runway is no place to roll on
const ROLLING_MPS2 = 0.5; // estimate: what soft ground takes by itself

/** A trickle of power until the wheels are down, less of it where the way runs out; then no brakes but for the end. */
const softly: Touch = (b, m, v) => {
  const left = clamp((b.latestTouchdownM - v.xM) / TRICKLING_M, LEAST_SHARE, 1);
  if (m.phase === 'round-out' && v.clearanceM < BELOW_M)
    m.hands.throttle = Math.max(m.hands.throttle, TRICKLE * left);
  const far = b.runway.surfaceEndM - v.xM > STOPPING_M && neededMps2(b, v) < ROLLING_MPS2;
  if (m.phase === 'landing-roll' && far) m.hands.brake = 0;
};

/** The end of a glide is flown without power too; after going round it is a landing like any other. */
const withoutPower: Touch = (_, m) => {
  if (m.phase === 'round-out' && m.goArounds === 0) m.hands.throttle = 0;
};

const TOUCHES: Partial<Record<Briefing['task']['technique'], Touch>> = {
  'soft-field': softly,
  glide: withoutPower,
};

/** Call after the phase, before the levers. */
export const touchOf = (b: Briefing): Touch => TOUCHES[b.task.technique] ?? plain;
const plain: Touch = () => {};
