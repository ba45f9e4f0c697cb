import type { DueFact, LessonMemory } from '../memory.ts';

type Asked = Pick<DueFact, 'dueS' | 'heightM' | 'why'> &
  Partial<Pick<DueFact, 'id' | 'gateFt' | 'ofHoldOff'>>;

/** A go-around is due from here on; whether it comes is watched in `go-around.ts`. */
export const askGoAround = (m: LessonMemory, asked: Asked): void => {
  const { circuit } = m.legs;
  m.dues.push({
    circuit,
    id: 'asked',
    gateFt: null,
    ofHoldOff: false,
    ...asked,
    answered: false,
    ignored: false,
  });
};

/** The same for what goes on asking: once in a circuit. */
export const askGoAroundOnce = (m: LessonMemory, asked: Asked): void => {
  if (!m.dues.some(({ circuit, why }) => circuit === m.legs.circuit && why === asked.why))
    askGoAround(m, asked);
};
