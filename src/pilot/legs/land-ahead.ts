import { clamp, cos, sin } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import { isInside } from '../briefing/bad-ground.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { selectFlap } from '../flap.ts';
import { balance } from '../holds/balance.ts';
import { glideAt, glideRatio } from '../holds/glide.ts';
import { holdTrack } from '../holds/track.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

/** The engine has stopped after take-off: nose down, a field within 30 degrees ahead, flap when it is sure. */
const CHOICES_DEG = [0, 10, -10, 20, -20] as const;
const STRIP_M = 60;
const NEAREST = 0.6;
const FURTHEST = 1.1;
const ROLL_M = 300;
const STEP_M = 40;
const SURE_M = mFromFt(250);
const ROUND_OUT_S = 3.4;
const ROUND_OUT_FROM_M = mFromFt(15);
const ROUND_OUT_TO_M = mFromFt(65);

export const beginLandAhead = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.engineOut = true;
  m.tradeHoldRad = 0;
  m.landRad = fieldAhead(b, v);
  // Away from a late runway there is one still
  m.landings = b.circuits;
  if (m.phase !== 'round-out' && m.phase !== 'landing-roll') beginPhase(m, v, 'land-ahead');
};

export const landAhead = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const sure = v.clearanceM < SURE_M;
  if (!sure) m.regime = m.hands.flapStage > 0 ? 'take-off' : 'climb';
  else if (selectFlap(b, m, b.habits.final.stage)) m.regime = 'final';
  glideAt(b, m, v, sure ? b.plan.approachIasMps + FAST_MPS : b.glideIasMps);
  holdTrack(b, m, v, m.landRad);
  balance(b, m, v);
  const from = clamp(-ROUND_OUT_S * m.verticalSpeedMps, ROUND_OUT_FROM_M, ROUND_OUT_TO_M);
  if (v.clearanceM >= from) return;
  m.touchdowns = 0;
  m.rudderHold = 0;
  m.sideHoldRad = 0;
  beginPhase(m, v, 'round-out');
};

/** Some speed in hand for a round-out without power. */
const FAST_MPS = 2;

/** The way ahead with nothing but open ground where the wheels will meet it; straight on where all are bad. */
const fieldAhead = (b: Briefing, v: Readonly<PilotView>): number => {
  const reachM = glideRatio(b, 'final', v.groundspeedMps) * Math.max(0, v.clearanceM);
  const clear = CHOICES_DEG.map((deg) => wrapPi(v.trackRad + radFromDeg(deg))).find((trackRad) => {
    for (let farM = NEAREST * reachM; farM < FURTHEST * reachM + ROLL_M; farM += STEP_M) {
      for (const aside of [-STRIP_M, 0, STRIP_M]) {
        const x = v.xM + farM * cos(trackRad) - aside * sin(trackRad);
        const y = v.yM + farM * sin(trackRad) + aside * cos(trackRad);
        if (b.badGround.some((outline) => isInside(outline, x, y))) return false;
      }
    }
    return true;
  });
  return clear ?? v.trackRad;
};

/** The view turned so that the landing lies straight ahead on a centreline of its own. */
export const alongTheField = (m: PilotMemory, v: Readonly<PilotView>): Readonly<PilotView> => ({
  ...v,
  yM: 0,
  trackRad: wrapPi(v.trackRad - m.landRad),
  headingRad: wrapPi(v.headingRad - m.landRad),
});
