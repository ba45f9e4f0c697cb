import type { LessonMemory } from '../../../lesson/memory.ts';
import type { PilotMemory } from '../../../pilot/memory.ts';
import { createPilot } from '../../../pilot/pilot.ts';
import type { ControlSource } from '../../../session/source.ts';
import type { Flown } from '../../flown.ts';
import { PHASE_OF } from '../../look.ts';
import { withDescent } from './own-descent.ts';
import { waysOf } from './own-hands.ts';
import type { Style } from './style.ts';

/**
 * The model pilot with somebody's style: it reads a needle wrong where a speed is held wrong, it turns where that
 * one turned, it leaves the power where that one left it. For all else it looks and answers as it always does.
 */
export const flyInStyle = (flown: Flown, style: Style): ControlSource<unknown> => {
  const { model, briefing, flight } = flown;
  const pilot = createPilot(model, flight.plan, waysOf(style), withDescent(briefing, style.descentLateM));
  return { ...pilot, name: 'model pilot in a style' } as ControlSource<unknown>;
};

/** Long enough on a leg for flap and the rest. */
const SETTLED_S = 6;

/** As above, taking over where the lesson has seen the flight to be: no guess at a corner, and the circuits counted. */
export const takeOverOn = (
  flown: Flown,
  source: ControlSource<unknown>,
  { legs, finalFromM }: LessonMemory,
): ControlSource<unknown> => ({
  ...source,
  begin: (snapshot, controls) => {
    const m = source.begin(snapshot, controls) as PilotMemory;
    m.landings = legs.circuit - 1;
    const phase = PHASE_OF[legs.leg];
    if (phase === undefined) return m;
    m.phase = phase;
    m.turning = legs.leg.startsWith('turn-');
    m.phaseFromS = m.turning ? snapshot.timeS : snapshot.timeS - SETTLED_S;
    if (phase === 'base' || phase === 'final' || (phase === 'downwind' && (m.views[0]?.xM ?? 0) <= 0))
      m.levelled = true;
    m.finalLengthM = legs.leg === 'final' ? finalFromM + flown.model.runway.aimM : 0;
    return m;
  },
});
