import { acrossM, alongM, type Runway } from '../../aerodrome/runway.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { goAround } from '../../pilot/legs/go-around.ts';
import { beginPhase } from '../../pilot/memory.ts';
import { createPilot, type Ways } from '../../pilot/pilot.ts';
import type { ControlSource } from '../../session/source.ts';
import type { Model } from '../../simulation/model.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { mFromFt } from '../../units/conversions.ts';

/** What the others of the circuit see of the student's aeroplane. */
export interface Eyes {
  own: Readonly<Snapshot> | null;
}

/** With somebody on the runway one goes around by here, and not from the round-out (common practice: decided early). */
const DECIDE_M = mFromFt(250);
const LAST_M = mFromFt(30);
/** Further in than this share of the spacing, somebody is on base or final and lands first. */
const INSIDE_SHARE = 0.8;

const isOnRunway = (own: Readonly<Snapshot>, runway: Runway): boolean => {
  const along = alongM(runway, own.eastM, own.northM);
  const across = acrossM(runway, own.eastM, own.northM);
  return (
    own.onGround &&
    along > runway.surfaceStartM &&
    along < runway.surfaceEndM &&
    Math.abs(across) < runway.widthM
  );
};

/**
 * One of the others, flown by the model pilot as ever, but for two things that the student may bring about: with the
 * student on the runway it goes around, and with the student ahead on base or final it stays on downwind until the
 * student has gone by.
 */
export const otherPilot = (model: Model, plan: CircuitPlan, eyes: Eyes): ControlSource<unknown> => {
  const { runway } = model;
  const ways: Ways = {
    beforeLook: (_, m, v) => {
      const landing = m.phase === 'final' && v.clearanceM < DECIDE_M && v.clearanceM > LAST_M;
      if (landing && eyes.own !== null && isOnRunway(eyes.own, runway)) goAround(m, v, 'runway occupied');
    },
    afterLook: (_, m, v) => {
      const { own } = eyes;
      // Decided in this look: the turn itself has not begun
      const turnsBase = m.phase === 'base' && m.phaseFromS === v.timeS;
      if (!turnsBase || own === null || own.onGround) return;
      const ownX = alongM(runway, own.eastM, own.northM);
      const ownOut = plan.side * acrossM(runway, own.eastM, own.northM);
      const yetToPass = ownX < 0 && ownOut < INSIDE_SHARE * plan.spacingM && ownX < v.xM;
      if (yetToPass) beginPhase(m, v, 'extended');
    },
  };
  return createPilot(model, plan, ways) as ControlSource<unknown>;
};
