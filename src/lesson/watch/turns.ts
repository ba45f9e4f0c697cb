import { atan2 } from '../../maths/functions.ts';
import { closeFact } from '../close-fact.ts';
import type { Lesson } from '../lesson.ts';
import { newMeasure, takeIn } from '../measure.ts';
import type { LessonMemory, TurnFact } from '../memory.ts';
import { turnOnto } from '../names.ts';

/** How long after the roll-out the far side of the centreline still counts as overshooting the turn. */
const OVERSHOOT_S = 15; // our choice: later it is drift

/** Opens a turn's fact when the detection has just named one, and closes the one before. */
export const noteTurnChange = (m: LessonMemory): void => {
  const last = m.turns[m.turns.length - 1];
  if (last !== undefined && last.toS === null) last.toS = m.legs.fromS;
  const onto = turnOnto(m.legs.leg);
  if (onto === null) return;
  // Only the last turn is still looked at
  closeFact(last);
  m.turns.push({
    circuit: m.legs.circuit,
    onto,
    fromS: m.legs.fromS,
    toS: null,
    bankRad: newMeasure(),
    ball: newMeasure(),
    fromHeightM: m.legs.levelHeightM,
    fromAlongM: m.legs.levelAlongM,
    fromOutM: m.legs.levelOutM,
    overshootM: 0,
  });
};

export const takeInTurn = (m: LessonMemory, lesson: Lesson): void => {
  const turn = m.turns[m.turns.length - 1];
  if (turn === undefined) return;
  const { timeS, bankRad, outM } = lesson.where;
  if (turn.toS === null && m.legs.rolledOutS === null) {
    takeIn(turn.bankRad, Math.abs(bankRad));
    takeIn(turn.ball, Math.abs(m.smoothBall));
  }
  if (turn.onto === 'final' && (turn.toS === null || timeS - turn.toS < OVERSHOOT_S))
    noteOvershoot(turn, outM);
};

/** How far behind the wing the threshold stood where a turn began, on the ground: 0 abeam. */
export const angleBehindWingRad = (turn: TurnFact): number =>
  atan2(-turn.fromAlongM, Math.max(1, Math.abs(turn.fromOutM)));

const noteOvershoot = (turn: TurnFact, outM: number): void => {
  // A turn that began beyond the centreline has nothing to overshoot on that side.
  const beyondM = turn.fromOutM >= 0 ? -outM : outM;
  turn.overshootM = Math.max(turn.overshootM, beyondM);
};
