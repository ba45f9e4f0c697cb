import type { Snapshot } from '../../simulation/snapshot.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt } from '../../units/conversions.ts';
import { newMeasure, takeIn } from '../measure.ts';
import type { LessonMemory } from '../memory.ts';

/** The nose is down and the glide settled by then (common practice). */
const SETTLED_S = 8;
/** Below this the round-out takes the speed off. */
const ROUND_OUT_M = mFromFt(60); // our choice: above any round-out

/** From the moment the engine stops in the air: which way it was, how far off that the aeroplane turns, how fast. */
export const watchEngine = (m: LessonMemory, s: Readonly<Snapshot>): void => {
  if (m.engine === null) {
    if (!s.engineDead || s.onGround) return;
    m.engine = {
      failedS: s.timeS,
      headingRadT: s.headingRadT,
      turnedRad: 0,
      iasMps: newMeasure(),
      firstIasMps: newMeasure(),
    };
  }
  if (s.onGround) return;
  const { engine } = m;
  engine.turnedRad = Math.max(engine.turnedRad, Math.abs(wrapPi(s.headingRadT - engine.headingRadT)));
  if (s.wheelClearanceM < ROUND_OUT_M) return;
  // A memory that was kept by an earlier version has none
  engine.firstIasMps ??= newMeasure();
  takeIn(s.timeS - engine.failedS > SETTLED_S ? engine.iasMps : engine.firstIasMps, m.smoothIasMps);
};
