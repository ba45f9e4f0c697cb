import { aerodromeNamed, aeroplaneNamed, DEMO, exerciseNamed, exerciseOf } from '../../src/catalogue.ts';
import { beginFlight } from '../../src/flight/begin.ts';
import { type Flight, lessonMemory } from '../../src/flight/flight.ts';
import { modelPilot, otherPilot } from '../../src/flight/model-pilot.ts';
import { practised } from '../../src/flight/result.ts';
import { flyStep, isLookStep, isOver, noteEnd } from '../../src/flight/run.ts';
import { exerciseScenario } from '../../src/lesson/exercises/exercise-scenario.ts';
import { chooseProcedures, type ProcedureChoice } from '../../src/lesson/procedures/choose.ts';
import { lookoutPercent } from '../../src/lesson/procedures/lookout.ts';
import { isReadBack } from '../../src/lesson/procedures/memory.ts';
import { prepare } from '../../src/simulation/model.ts';
import type { Scenario } from '../../src/simulation/scenario.ts';

/** An exercise with checks and calls, as the page lays it ready. */
export const shownExercise = (
  id: string,
  seed: number,
  aeroplane: string = DEMO.aeroplane,
  choice: Partial<ProcedureChoice> = {},
): Scenario => {
  const exercise = exerciseNamed(id);
  const place = aerodromeNamed(exercise.aerodrome ?? DEMO.aerodrome);
  const scenario = exerciseScenario(exercise, aeroplaneNamed(aeroplane), place, seed);
  const asked: ProcedureChoice = {
    radio: 'untowered',
    words: 'icao',
    others: 0,
    surprises: false,
    ...choice,
  };
  const start = scenario.start.leg ?? 'final';
  const { procedures, failures } = chooseProcedures(asked, seed, scenario.weather.qnhHpa, start);
  return { ...scenario, procedures, failures: [...scenario.failures, ...failures] };
};

/** A flight by the model pilot to its end, as the page ends it. */
export const demonstrated = (scenario: Scenario, seconds = 3600): Flight => {
  const model = prepare(scenario);
  const flight = beginFlight({ scenario, model, source: modelPilot, otherPilot, judgedBy: null });
  while (!isOver(flight) && flight.session.step < seconds * 60) {
    flyStep(flight);
    if (isLookStep(flight)) noteEnd(flight, practised(flight, exerciseOf(scenario)));
  }
  return flight;
};

/** Of what was due beside the flying: how much there was, and what was left out. */
export interface Shown {
  readonly due: number;
  readonly missing: readonly string[];
}

/** Checks whose place has been passed, and the last one. */
export const checksShown = (flight: Flight): Shown => {
  const lists = (lessonMemory(flight).procedures?.lists ?? []).filter(
    ({ list, interrupted, closedS }) => !interrupted && (closedS !== null || list === 'after-landing'),
  );
  const items = lists.flatMap(({ list, circuit, items: all }) =>
    all.map(({ id, doneS }) => ({ name: `${list}/${id} (${circuit})`, isDone: doneS !== null })),
  );
  return { due: items.length, missing: items.filter(({ isDone }) => !isDone).map(({ name }) => name) };
};

export const callsShown = (flight: Flight): Shown => {
  const p = lessonMemory(flight).procedures;
  const calls = (p?.calls ?? []).map(({ call, circuit, saidS, choice, lateS }) => ({
    name: `${call} (${circuit})`,
    isDone: saidS !== null && choice === 0 && (lateS === null || saidS <= lateS),
  }));
  const answers = (p?.answers ?? [])
    .filter(({ answer }) => isReadBack(answer))
    .map(({ answer, readS }) => ({ name: `back ${answer}`, isDone: readS !== null }));
  const all = [...calls, ...answers];
  return { due: all.length, missing: all.filter(({ isDone }) => !isDone).map(({ name }) => name) };
};

export const lookoutsShown = (flight: Flight): Shown => {
  const { turns, procedures: p } = lessonMemory(flight);
  const looked = turns.flatMap((turn) => {
    const percent = p === null ? null : lookoutPercent(p, turn, flight.lesson);
    const name = `before ${turn.onto} at ${Math.round(turn.fromS)} s`;
    return percent === null ? [] : [{ name, isDone: percent === 100 }];
  });
  return { due: looked.length, missing: looked.filter(({ isDone }) => !isDone).map(({ name }) => name) };
};
