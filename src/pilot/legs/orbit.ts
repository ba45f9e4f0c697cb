import { wrapPi } from '../../units/angles.ts';
import { radFromDeg } from '../../units/conversions.ts';
import type { Briefing } from '../briefing/briefing.ts';
import { holdBank } from '../holds/attitude.ts';
import { balance } from '../holds/balance.ts';
import { holdLevel } from '../holds/path.ts';
import { beginPhase, type PilotMemory } from '../memory.ts';
import type { PilotView } from '../view.ts';

const BANK_RAD = radFromDeg(25); // common practice: medium bank
const ROUND_RAD = radFromDeg(350); // our choice: the roll-out takes the rest

/** Once round, level, away from the runway; then downwind again. */
export const flyOrbit = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  m.orbitRad -= wrapPi(v.trackRad - m.orbitTrackRad);
  m.orbitTrackRad = v.trackRad;
  holdBank(b, m, v, -BANK_RAD);
  holdLevel(b, m, v, b.plan.heightM, b.habits[m.regime].iasMps);
  balance(b, m, v);
  if (m.orbitRad < ROUND_RAD) return;
  beginPhase(m, v, 'downwind');
  m.turning = false;
};
