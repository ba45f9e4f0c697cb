/**
 * A student who is not our pilot: flies by what is seen at a glance, some tenths of a second late, with keys or a
 * gamepad through the hand that the page uses (`src/input/hand.ts`). Its laws are of its own: written from how
 * people are taught and err, not from `src/pilot`. What it knows is what the brief says.
 */
import type { CircuitPlan } from '../../../src/circuit/types.ts';
import { beginHand, type HandMemory, moveHand } from '../../../src/input/hand.ts';
import { clearIntent, newIntent } from '../../../src/input/intent.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import type { Model } from '../../../src/simulation/model.ts';
import { degFromRad } from '../../../src/units/conversions.ts';
import { glanceAt, misread } from './eyes.ts';
import type { Mistakes } from './faults.ts';
import { readFingers } from './fingers.ts';
import { chance } from './luck.ts';
import { type Mind, newMind, nose, type Stage, stickToNose, type Who } from './mind.ts';
import type { Person } from './person.ts';
import { cardOf } from './plan-card.ts';
import { FLY } from './stages.ts';

export interface StudentMemory {
  readonly mind: Mind;
  readonly hand: HandMemory;
}

/** Near the ground nobody looks elsewhere. */
const NEAR_GLANCE_S = 0.2;
const NEAR_M = 25;
const STEP_S = 1 / 60;

/** The runway lies ahead. */
const AHEAD: ReadonlySet<Stage> = new Set(['roll', 'final', 'flare', 'on-wheels']);

/** Where the flight begins, by the leg of its start; the line-up where it has none. */
const stageOf = (model: Model): Stage => {
  const { leg } = model.scenario.start;
  return leg === null || leg === 'line-up' ? 'roll' : leg;
};

export const createStudent = (
  model: Model,
  plan: CircuitPlan,
  person: Person,
  mistakes: Mistakes = {},
  seed = 1,
): ControlSource<StudentMemory> => {
  const { aeroplane } = model.scenario;
  const who: Who = { person, mistakes, side: plan.side, card: cardOf(plan, aeroplane) };
  const intent = newIntent();
  return {
    name: `student, ${person.name}`,
    begin: (snapshot, controls) => {
      const mind = newMind(seed, person, stageOf(model));
      mind.wantPitchDeg = degFromRad(snapshot.pitchRad);
      mind.wantRpm = who.card.fixedPitch ? snapshot.engineRevps * 60 : snapshot.throttle * 2500;
      mind.lastIasKt = snapshot.shownIasMps / 0.514444;
      mind.stickSum = controls.elevator;
      return {
        mind,
        hand: beginHand(person.hands === 'keys' ? 'hold' : 'stick', snapshot, controls),
      };
    },
    next: (s, { mind, hand }, controls) => {
      const near =
        mind.stage === 'flare' ||
        mind.stage === 'on-wheels' ||
        mind.stage === 'roll' ||
        (mind.stage === 'final' && s.wheelClearanceM < NEAR_M);
      const glanceS = near ? NEAR_GLANCE_S : person.glanceS;
      if (mind.pending === null && s.timeS >= mind.lastGlanceS + glanceS) {
        const sinceS = Math.min(5, s.timeS - mind.lastGlanceS);
        misread(mind.errors, person, sinceS, mind.luck);
        const g = glanceAt(s, plan, mind.errors, AHEAD.has(mind.stage));
        const rate = (g.iasKt - mind.lastIasKt) / Math.max(0.1, sinceS);
        mind.iasRateKtps += 0.3 * (Math.max(-4, Math.min(4, rate)) - mind.iasRateKtps);
        mind.lastIasKt = g.iasKt;
        mind.lastGlanceS = s.timeS;
        mind.pending = g;
        mind.actAtS = s.timeS + person.reactionS * (near ? 0.6 : 0.8 + 0.4 * chance(mind.luck));
      }
      const { pending } = mind;
      if (pending !== null && s.timeS >= mind.actAtS) {
        mind.pending = null;
        // What was seen is acted on now: the keys go down at this instant
        const g = { ...pending, timeS: s.timeS };
        FLY[mind.stage](mind, who, g);
        if (mind.stage !== 'flare') nose(mind, who, g);
      }
      stickToNose(mind, degFromRad(s.pitchRad), degFromRad(s.pitchRateRadps), STEP_S);
      clearIntent(intent);
      readFingers(mind.fingers, s.timeS, intent);
      if (mind.fingers.stick !== null) {
        const { roll } = mind.fingers;
        intent.roll = roll.untilS > s.timeS ? roll.way : 0;
      }
      moveHand(hand, s, intent, aeroplane, controls);
    },
  };
};
