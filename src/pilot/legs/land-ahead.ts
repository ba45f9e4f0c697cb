import { cos, sin } from '../../maths/functions.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt, radFromDeg } from '../../units/conversions.ts';
import { isInside } from '../briefing/bad-ground.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { selectFlap } from '../flap.ts';
import { balance } from '../holds/balance.ts';
import { glideAt, glideRatio, roundOutFromM } from '../holds/glide.ts';
import { holdTrack } from '../holds/track.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

/** The engine has stopped after take-off: nose down, a field within 30 degrees ahead (common practice), flap when it is sure. */
const CHOICES_DEG = [0, 10, -10, 20, -20] as const;
const STRIP_M = 60; // our choice: so far aside fields are looked at
const NEAREST = 0.6; // our choice: of the reach, where the look begins
const FURTHEST = 1.1; // our choice: of the reach, where it ends
const ROLL_M = 300; // estimate: run in a field
const STEP_M = 40; // our choice: how finely fields are looked at
const SURE_M = mFromFt(250); // our choice: below it the field is not changed

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
  else if (selectFlap(b, m, v, b.habits.final.stage)) m.regime = 'final';
  glideAt(b, m, v, sure ? b.plan.approachIasMps + FAST_MPS : b.glideIasMps);
  holdTrack(b, m, v, m.landRad);
  balance(b, m, v);
  if (v.clearanceM >= roundOutFromM(m)) return;
  m.touchdowns = 0;
  m.rudderHold = 0;
  m.sideHoldRad = 0;
  beginPhase(m, v, 'round-out');
};

/** Some speed in hand for a round-out without power. */
const FAST_MPS = 2; // tuned

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
