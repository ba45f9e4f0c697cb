import { exerciseOf } from '../../catalogue.ts';
import { alignByLeg, timeInSecond } from '../../study/compare.ts';
import type { StudyFlight } from '../../study/flown.ts';
import type { TrailPiece } from '../../study/trail.ts';
import type { Replayed, Sample } from './replayed.ts';

/** What the study is handed of a flight. */
export const studyFlightOf = ({ recording, plan, limits }: Replayed): StudyFlight => ({
  recording,
  plan,
  exercise: exerciseOf(recording.scenario),
  limits,
});

/** The trail in the study's colours, which were found by flying on from every instant; elsewhere as it was. */
export const coloured = (replayed: Replayed, trail: readonly TrailPiece[]): Replayed => {
  const [first] = trail;
  const last = trail[trail.length - 1];
  if (first === undefined || last === undefined) return replayed;
  const colourOf = (sample: Sample): Sample => {
    const piece = trail.find(({ fromS, toS }) => sample.timeS >= fromS && sample.timeS < toS);
    return piece === undefined ? sample : { ...sample, band: piece.colour };
  };
  return { ...replayed, samples: replayed.samples.map(colourOf) };
};

/** The second flight on the first one's clock, leg by leg, so that one cursor serves both. */
export const onClockOf = (first: Replayed, second: Replayed): Replayed => {
  if (first.memory === null || second.memory === null) return second;
  const alignment = alignByLeg(first.memory, second.memory);
  const back = { ...alignment, firstS: alignment.secondS, secondS: alignment.firstS };
  return {
    ...second,
    samples: second.samples.map((s) => ({ ...s, timeS: timeInSecond(back, s.timeS) })),
    endS: timeInSecond(back, second.endS),
    at: (timeS, into) => second.at(timeInSecond(alignment, timeS), into),
  };
};
