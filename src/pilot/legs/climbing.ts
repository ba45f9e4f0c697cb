import { mFromFt } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { climbAt, holdLevel } from '../holds/path.ts';
import { trimOut } from '../holds/trim.ts';
import type { PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

/** Flap comes up at a safe height and speed (common practice: 200 ft). */
const FLAP_UP_M = mFromFt(200);
/** Common practice begins to level off a tenth of the rate of climb below the height, 6 s; these hands take 4 (tuned). */
const LEVELLING_S = 4;

/** Climbs to circuit height and stays there: attitude, power, trim. */
export const climbToCircuit = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  const heightM = b.plan.heightM;
  if (v.clearanceM > FLAP_UP_M && m.hands.flapStage > 0 && !onDownwind(m)) m.hands.flapStage = 0;
  if (!m.levelled && v.heightM + LEVELLING_S * Math.max(0, m.verticalSpeedMps) >= heightM) m.levelled = true;
  if (m.levelled) {
    if (!onDownwind(m)) m.regime = 'cruise';
    holdLevel(b, m, v, heightM, b.habits[m.regime].iasMps);
  } else {
    m.regime = m.hands.flapStage > 0 ? 'take-off' : 'climb';
    climbAt(b, m, v, b.habits.climb.iasMps);
  }
  trimOut(b, m, v);
};

const onDownwind = (m: PilotMemory): boolean => m.regime === 'downwind' || m.regime === 'abeam';
