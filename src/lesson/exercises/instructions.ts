import { alongM } from '../../aerodrome/runway.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { Instruction } from '../../simulation/task.ts';
import { wrapPi } from '../../units/angles.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory, SaidFact } from '../memory.ts';
import { askGoAround } from '../watch/dues.ts';
import { FULL_POWER } from '../watch/full-power.ts';

const NO_POWER = 0.1; // our choice: a lever all but closed
const PRESSED = 0.05; // our choice: less is a resting foot
const ROUND_RAD = radFromDeg(300); // our choice: the roll-out takes the rest

/** When each is said; SI. */
const isTime = (i: Instruction, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): boolean => {
  const { leg } = m.legs;
  const { where } = lesson;
  switch (i.what) {
    case 'stop':
      return leg === 'take-off-roll' && s.onGround && s.iasMps >= mpsFromKt(i.atIasKt);
    case 'go-around':
      return (leg === 'final' || leg === 'hold-off') && where.heightM < mFromFt(i.atHeightFt);
    case 'orbit':
      return leg === 'downwind' && where.alongM < i.atAlongM;
    default:
      return leg === 'downwind' && where.alongM < 0;
  }
};

/** Whether it is being done now. */
const isObeyed = (said: SaidFact, m: LessonMemory, s: Readonly<Snapshot>): boolean => {
  switch (said.what) {
    case 'stop':
      return s.throttle < NO_POWER;
    case 'go-around':
      return s.throttle > FULL_POWER;
    case 'orbit':
      return said.turnedRad > ROUND_RAD;
    default:
      return m.legs.leg === 'turn-to-base';
  }
};

/** Says what is due and notes when it is done. A called go-around is due like any other. */
export const watchInstructions = (m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  for (const instruction of lesson.task.instructions) {
    const { what } = instruction;
    if (instruction.circuit !== m.legs.circuit || m.said.some((said) => said.what === what)) continue;
    if (!isTime(instruction, m, lesson, s)) continue;
    const lastTrackRad = lesson.where.trackRad;
    m.said.push({
      what,
      circuit: m.legs.circuit,
      saidS: s.timeS,
      obeyedS: null,
      thenS: null,
      turnedRad: 0,
      lastTrackRad,
      brakedFirst: false,
    });
    if (what === 'go-around') {
      askGoAround(m, { dueS: s.timeS, heightM: lesson.where.heightM, why: 'a go-around was called' });
    }
  }
  for (const said of m.said) follow(said, m, lesson, s);
  callBase(m, lesson, s.timeS);
};

const follow = (said: SaidFact, m: LessonMemory, lesson: Lesson, s: Readonly<Snapshot>): void => {
  const { trackRad } = lesson.where;
  // Away from the runway counts, the other way round takes it back
  if (said.what === 'orbit' && m.legs.leg === 'downwind')
    said.turnedRad -= wrapPi(trackRad - said.lastTrackRad);
  said.lastTrackRad = trackRad;
  if (said.what === 'stop' && said.obeyedS === null && s.brake > PRESSED) said.brakedFirst = true;
  if (said.obeyedS === null && isObeyed(said, m, s)) said.obeyedS = s.timeS;
};

/** Base is called where the extension that was asked for ends. */
const callBase = (m: LessonMemory, { task, plan, runway, where }: Lesson, timeS: number): void => {
  for (const said of m.said) {
    const asked = task.instructions.find(({ what }) => what === said.what);
    if (said.thenS !== null || asked === undefined || !('byM' in asked)) continue;
    const { eastM, northM } = plan.turns.base.from;
    if (m.legs.leg === 'downwind' && where.alongM <= alongM(runway, eastM, northM) - asked.byM)
      said.thenS = timeS;
  }
};

/** The words of what is said, as they reach the pilot. */
export const INSTRUCTION_WORDS: Readonly<Record<Instruction['what'], string>> = {
  stop: 'Stop, stop: abandon the take-off.',
  'go-around': 'Go around.',
  extend: 'Extend downwind; base will be called.',
  'number-two': 'You are number two: extend downwind behind the one ahead.',
  orbit: 'Orbit once, away from the runway, and report back on downwind.',
};

const TURN_BASE = 'Turn base now.';
/** How long words stay. */
const SPOKEN_S = 8; // our choice: time to read them

/** What is being said to the pilot now, or null: for whoever shows or speaks it. */
export const wordsNow = (m: LessonMemory, timeS: number): string | null => {
  const fresh = (atS: number | null): boolean => atS !== null && timeS >= atS && timeS - atS < SPOKEN_S;
  if (m.said.some(({ thenS }) => fresh(thenS))) return TURN_BASE;
  const now = m.said.find(({ saidS }) => fresh(saidS));
  return now === undefined ? null : INSTRUCTION_WORDS[now.what];
};
