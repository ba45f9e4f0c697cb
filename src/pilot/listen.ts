import type { Instruction } from '../simulation/task.ts';
import { mFromFt, mpsFromKt } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import { beginGlide, isGlideKey } from './legs/glide.ts';
import { goAround } from './legs/go-around.ts';
import { beginLandAhead } from './legs/land-ahead.ts';
import { isSlipDue } from './legs/slip.ts';
import { beginPhase, type PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** When each instruction is heard, as the pilot sees it. */
const isSaid = (i: Instruction, m: PilotMemory, v: Readonly<PilotView>): boolean => {
  switch (i.what) {
    case 'stop':
      return m.phase === 'take-off' && v.onGround && v.iasMps >= mpsFromKt(i.atIasKt);
    case 'go-around':
      return (m.phase === 'final' || m.phase === 'round-out') && v.heightM < mFromFt(i.atHeightFt);
    case 'orbit':
      return m.phase === 'downwind' && !m.turning && v.xM < i.atAlongM;
    default:
      return m.phase === 'downwind' && !m.turning && v.xM < 0;
  }
};

type Answer = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>) => void;

/** Throttle, straight, brakes: the landing roll, and no circuit after it. */
const abandon: Answer = (b, m, v) => {
  m.landings = b.circuits;
  m.touchedS = v.timeS;
  m.touchdowns = 1;
  beginPhase(m, v, 'landing-roll');
};

const orbit: Answer = (_, m, v) => {
  m.orbitRad = 0;
  m.orbitTrackRad = v.trackRad;
  beginPhase(m, v, 'orbit');
};

const extend: Answer = (_, m, v) => beginPhase(m, v, 'extended');

const ANSWERS: Readonly<Record<Instruction['what'], Answer>> = {
  stop: abandon,
  'go-around': (_, m, v) => goAround(m, v, 'called'),
  orbit,
  extend,
  'number-two': extend,
};

/** A glide begins at its key, a slip where final is high; after going round it is a circuit like any other. */
const chooseTechnique: Answer = (b, m, v) => {
  if (m.goArounds > 0) return;
  if (b.task.technique === 'glide' && isGlideKey(b, m, v)) beginGlide(m, v);
  if (b.task.technique === 'slip' && isSlipDue(b, m, v)) beginPhase(m, v, 'slip');
};

/** Hears what is said, and the silence of an engine that has stopped: acts on it at once, once. */
export const listen = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>): void => {
  if (v.silent && !m.engineOut && !v.onGround) beginLandAhead(b, m, v);
  if (m.engineOut) return;
  chooseTechnique(b, m, v);
  const circuit = m.landings + m.goArounds + 1;
  for (const instruction of b.task.instructions) {
    const { what } = instruction;
    if (m.heard.includes(what) || instruction.circuit !== circuit || !isSaid(instruction, m, v)) continue;
    m.heard.push(what);
    ANSWERS[what](b, m, v);
  }
};
