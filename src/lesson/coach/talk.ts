import { degFromRad, ftFromM, ktFromMps, mFromFt } from '../../units/conversions.ts';
import { fixed, thousands } from '../../units/format.ts';
import type { LegName } from '../names.ts';
import { currentList, isComplete } from '../procedures/watch-checks.ts';
import type { CoachContext, Word } from './context.ts';
import { secondsToTurn, turnAhead } from './reminders.ts';

/** What an instructor says on each leg to somebody who is talked through it. */
type Say = (c: CoachContext) => string;

const kt = (mps: number): string => `${fixed(ktFromMps(mps))} knots`;
const flap = ({ lesson }: CoachContext, stage: number): string =>
  stage === 0 ? 'flap up' : `flap ${fixed(lesson.aeroplane.flap.stages[stage]?.deg ?? 0)}`;

const ON_LEG: Partial<Record<LegName, Say>> = {
  'line-up': () => 'Checks done, runway clear: full power, smoothly, and straight with the feet.',
  'take-off-roll': ({ lesson }) =>
    `Airspeed alive. At ${fixed(lesson.aeroplane.speeds.rotateKt)} knots ease the nose up.`,
  upwind: ({ lesson }) => `Climb at ${kt(lesson.plan.legs.upwind.iasMps)}, on the extended centreline; trim.`,
  'turn-to-crosswind': () => 'A gentle climbing turn, 15 to 20 degrees, nose where it was.',
  crosswind: ({ lesson }) =>
    `Track square to the runway; level at ${thousands(Math.round(ftFromM(lesson.plan.heightM)))} feet: attitude, power, trim.`,
  downwind: ({ lesson }) =>
    `Hold height and ${kt(lesson.plan.legs.downwind.iasMps)}, parallel to the runway; trim.`,
  base: (c) =>
    `Power back, ${flap(c, c.lesson.aeroplane.plan.baseStage)}, ${kt(c.lesson.plan.legs.base.iasMps)}, trim; let it come down.`,
  'turn-to-final': () => 'Roll in early, never beyond 30 degrees, in balance.',
  final: (c) =>
    `${flap(c, c.lesson.aeroplane.plan.finalStage)}, ${kt(c.lesson.plan.approachIasMps)}; hold the aim point still in the window.`,
  'hold-off': () => 'Look far ahead; power closed; hold it off, a little more back, and wait.',
  'landing-roll': () => 'Straight with the feet, hold the nosewheel off, brakes in short strokes.',
  'go-around': () => 'Full power, carburettor heat cold; attitude; then flap by stages.',
};

const TURN_NOW_S = 1;
const FLARE_M = mFromFt(35);

/** What comes next, for somebody who is talked through it. */
export const talkNow = (c: CoachContext): Word[] => {
  const { m, lesson } = c;
  const { leg, circuit } = m.legs;
  const words: Word[] = [];
  const say = ON_LEG[leg];
  const check = m.procedures === null ? null : currentList(m.procedures);
  const first = leg === 'line-up' && check !== null && !isComplete(check);
  if (say !== undefined && !first)
    words.push({ topic: `leg-${leg}-${circuit}`, text: say(c), rank: 80, talk: true, afterS: 1.5 });
  const onto = turnAhead(leg);
  const leftS = secondsToTurn(c);
  if (onto !== null && leftS !== null && leftS < TURN_NOW_S && leftS > -8) {
    const where =
      onto === 'base'
        ? `, the threshold ${fixed(degFromRad(lesson.plan.baseTurnAngleRad))} degrees behind the wing`
        : '';
    words.push({
      topic: `turn-${onto}-${circuit}`,
      text: `Turn to ${onto} now${where}.`,
      rank: 35,
      talk: true,
      afterS: 0,
    });
  }
  if (leg === 'final' && lesson.where.clearM < FLARE_M)
    words.push({
      topic: `flare-${circuit}`,
      text: 'Round out: look far ahead, power off, nose up to level.',
      rank: 15,
      talk: true,
      afterS: 0,
    });
  return words;
};
