/** What is said in an exercise that the model pilot flies: by the coach, and before it by who gives the exercise. */
import { aerodromeNamed, aeroplaneNamed, exerciseNamed } from '../../src/catalogue.ts';
import { beginFlight } from '../../src/flight/begin.ts';
import { COACH_STEPS, followCoach } from '../../src/flight/coach.ts';
import { lessonMemory, ownAircraft } from '../../src/flight/flight.ts';
import { flyStep } from '../../src/flight/run.ts';
import type { CoachLevel } from '../../src/lesson/coach/coach.ts';
import { exerciseScenario, scenarioPlan } from '../../src/lesson/exercises/exercise-scenario.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import type { ControlSource } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import type { Procedures } from '../../src/simulation/procedures.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';

interface Heard {
  readonly atS: number;
  readonly text: string;
  readonly s: Readonly<Snapshot>;
}

export interface SaidInExercise {
  readonly said: readonly Heard[];
  /** When each instruction of the exercise was given. */
  readonly told: Readonly<Record<string, number>>;
  /** What the tower said, by its name. */
  readonly answers: readonly string[];
}

interface Asked {
  readonly level: CoachLevel;
  readonly seed?: number;
  readonly seconds: number;
  readonly procedures?: Partial<Procedures>;
}

export const saidInExercise = (id: string, asked: Asked): SaidInExercise => {
  const exercise = exerciseNamed(id);
  const drawn = exerciseScenario(
    exercise,
    aeroplaneNamed('sandpiper'),
    aerodromeNamed('curlew-sands'),
    asked.seed ?? 1,
  );
  const silent: Procedures = { radio: 'untowered', words: 'icao', subscaleHpa: 1013, traffic: [] };
  const scenario = { ...drawn, procedures: { ...silent, ...asked.procedures } };
  const flight = beginFlight({
    scenario,
    model: prepare(scenario),
    plan: scenarioPlan(scenario),
    source: (model, plan) => createPilot(model, plan) as ControlSource<unknown>,
    otherPilot: null,
    judgedBy: null,
  });
  const said: Heard[] = [];
  for (let i = 0; i < 60 * asked.seconds && lessonMemory(flight).ended === null; i += 1) {
    flyStep(flight);
    const { snapshot: s } = ownAircraft(flight);
    if (s.step % COACH_STEPS !== 0) continue;
    const text = followCoach(flight, s, asked.level, true);
    if (text !== null) said.push({ atS: s.timeS, text, s: { ...s } });
  }
  const m = lessonMemory(flight);
  return {
    said,
    told: Object.fromEntries(m.said.map(({ what, saidS }) => [what, saidS])),
    answers: (m.procedures?.answers ?? []).map(({ answer }) => answer),
  };
};
