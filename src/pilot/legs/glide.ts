import { atan, atan2, clamp, cos } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { G0_MPS2 } from '../../units/constants.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import { type Briefing, STEEPEST_FINAL_BANK_RAD } from '../briefing.ts';
import { selectFlap } from '../flap.ts';
import { holdBank } from '../holds/attitude.ts';
import { balance } from '../holds/balance.ts';
import { glideAt, glideRatio } from '../holds/glide.ts';
import { straighten } from '../holds/straighten.ts';
import { holdLine, holdTrack } from '../holds/track.ts';
import type { PilotMemory } from '../memory.ts';
import { beginPhase } from '../phase-name.ts';
import type { PilotView } from '../view.ts';

/**
 * A glide from downwind: the way that is left against the way that the height is worth. Base when they are nearly
 * equal, straight for the runway when it runs short, flap when there is more than enough (AFH-3C p. 197).
 */
const DOWNWIND_MARGIN = 1.12;
const CUT_MARGIN = 1.06;
const FLAP_MARGIN = 1.1;
const TURN_RAD = radFromDeg(25);
const LINED_UP_RAD = radFromDeg(12);
const STRAIGHTEN_M = mFromFt(60);
const LOWEST_FLAP_M = mFromFt(100);
const ROUND_OUT_S = 2.9;
const ROUND_OUT_FROM_M = mFromFt(15);
const ROUND_OUT_TO_M = mFromFt(45);
/** Shortest way round a corner against the square one. */
const CORNER_SHARE = 0.43;

export const flyGlide = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const onFinal = Math.abs(wrapPi(v.trackRad)) < LINED_UP_RAD || m.finalFromRad > 0;
  if (m.turning) onDownwind(b, m, v);
  else if (!onFinal) onBase(b, m, v);
  else alongFinal(b, m, v);
  glideAt(b, m, v, m.hands.flapStage > 0 ? b.plan.approachIasMps : b.glideIasMps);
  if (v.clearanceM >= STRAIGHTEN_M) balance(b, m, v);
  const from = clamp(-ROUND_OUT_S * m.verticalSpeedMps, ROUND_OUT_FROM_M, ROUND_OUT_TO_M);
  if (v.clearanceM >= from) return;
  m.touchdowns = 0;
  beginPhase(m, v, 'round-out');
};
