import type { Briefing } from './briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** A trickle of power until the wheels are down; then the nose wheel off as long as it will stay, and no brakes. */
const TRICKLE = 0.1;
const BELOW_M = 3;
const ALL_THE_WAY_BACK = 1;

/** What a soft strip asks for on top of a normal round-out and roll. */
export const softly = (_: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (m.phase === 'round-out' && v.clearanceM < BELOW_M) m.hands.throttle = Math.max(m.hands.throttle, TRICKLE);
  if (m.phase !== 'landing-roll') return;
  m.hands.brake = 0;
  if (v.onGround && !v.noseWheelOnGround && v.iasMps < m.softIasMps) m.hands.elevator = ALL_THE_WAY_BACK;
};
