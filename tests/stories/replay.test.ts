// One replay (design/architecture.md, "Turn two"; issue "The house", 1): what the lesson remembers of a flight live is
// what the debrief and the study find in its recording, to the byte, with a tower and with others in the circuit.
import { describe, expect, it } from 'vitest';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { layOut } from '../../src/pages/debrief/replayed.ts';
import type { Recording } from '../../src/session/recording.ts';
import { seeAgain } from '../../src/study/flown.ts';
import { flyEverything } from '../support/everything-done.ts';

/** As text that keeps what JSON does not: not-a-number and the infinities. */
const written = (memory: LessonMemory | null): string =>
  JSON.stringify(memory, (_, value) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );

const inTheDebrief = (recording: Recording): string => written(layOut(recording, DEFAULT_TOLERANCES).memory);

const inTheStudy = (recording: Recording): string => {
  const { plan } = layOut(recording, DEFAULT_TOLERANCES);
  return written(seeAgain({ recording, plan, exercise: null, limits: DEFAULT_TOLERANCES }).memory);
};

describe('a towered flight with every call made', () => {
  const flight = flyEverything({}, { procedures: { radio: 'towered' } });
  const live = written(flight.m);

  it('was cleared to land and landed', () => {
    expect(flight.m.procedures?.clearedToLand).toBe(true);
    expect(flight.m.touchdowns).toHaveLength(1);
    expect(flight.m.dues).toEqual([]);
  });

  it('is the same in the debrief and in the study', () => {
    expect(inTheDebrief(flight.recording)).toBe(live);
    expect(inTheStudy(flight.recording)).toBe(live);
  });
});
