import { GATES_M } from '../../circuit/stabilised.ts';
import type { ToleranceSet } from '../../lesson/judge/tolerances.ts';
import type { Lesson } from '../../lesson/lesson.ts';
import type { LessonMemory } from '../../lesson/memory.ts';
import { faultsNow } from '../../lesson/watch/gates.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import type { TrailBand } from '../../views/trail.ts';

export type ApproachBand = TrailBand;

/**
 * How the approach stands, by the gate criteria of the lesson looked at all along the final: nothing wrong is
 * stabilised; something wrong with a gate still to come is recoverable; something wrong below the last gate, or
 * on from a gate that asked for a go-around, is go around. Nothing is said off the final and over the runway.
 */
export const bandNow = (
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  limits: ToleranceSet,
): ApproachBand => {
  if (m.legs.leg !== 'final' || s.onGround || lesson.where.alongM > 0) return 'plain';
  const due = m.dues[m.dues.length - 1];
  if (due !== undefined && due.circuit === m.legs.circuit && !due.answered) return 'go-around';
  if (faultsNow(m, lesson, s, limits).length === 0) return 'stabilised';
  return s.heightM < GATES_M.lastCall ? 'go-around' : 'recoverable';
};
