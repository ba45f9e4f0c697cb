import { acrossM, alongM, type Runway } from '../aerodrome/runway.ts';
import type { CircuitPlan } from '../circuit/types.ts';
import { goAround } from '../pilot/legs/go-around.ts';
import { beginPhase } from '../pilot/memory.ts';
import { createPilot, type Ways } from '../pilot/pilot.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { mFromFt } from '../units/conversions.ts';

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
 * One of the others, flown by the model pilot as ever, but for two things that the student, the first aircraft of the
 * session, may bring about: with the student on the runway it goes around, and with the student ahead on base or final
 * it stays on downwind until the student has gone by.
 */
export const otherPilot = (model: Model, plan: CircuitPlan): ControlSource<unknown> => {
  const { runway } = model;
  /** The student as this step sees him; carries nothing over. */
  let own: Readonly<Snapshot> | null = null;
  const ways: Ways = {
    beforeLook: (_, m, v) => {
      const landing = m.phase === 'final' && v.clearanceM < DECIDE_M && v.clearanceM > LAST_M;
      if (landing && own !== null && isOnRunway(own, runway)) goAround(m, v, 'runway occupied');
    },
    afterLook: (_, m, v) => {
      // Decided in this look: the turn itself has not begun
      const turnsBase = m.phase === 'base' && m.phaseFromS === v.timeS;
      if (!turnsBase || own === null || own.onGround) return;
      const ownX = alongM(runway, own.eastM, own.northM);
      const ownOut = plan.side * acrossM(runway, own.eastM, own.northM);
      const yetToPass = ownX < 0 && ownOut < INSIDE_SHARE * plan.spacingM && ownX < v.xM;
      if (yetToPass) beginPhase(m, v, 'extended');
    },
  };
  const pilot = createPilot(model, plan, ways) as ControlSource<unknown>;
  return {
    ...pilot,
    next: (snapshot, memory, controls, around) => {
      own = around?.[0]?.snapshot ?? null;
      pilot.next(snapshot, memory, controls);
    },
  };
};

/** What makes one of the others fly; handed in, so that who flies alone need not fetch the pilots. */
export type OtherPilot = typeof otherPilot;
