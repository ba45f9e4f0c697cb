// One replay (design/architecture.md, "Turn two"; issue "The house", 1): what the lesson remembers of a flight live is
// what the debrief and the study find in its recording, to the byte, with a tower and with others in the circuit.
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { CircuitPlan } from '../../src/circuit/types.ts';
import { beginFlight, resumeFlight, setBack } from '../../src/flight/begin.ts';
import { type Flight, lessonMemory, ownAircraft } from '../../src/flight/flight.ts';
import { otherPilot } from '../../src/flight/other-pilot.ts';
import { flyStep, isLookStep, isOver, noteEnd, tellFlight } from '../../src/flight/run.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import type { LessonMemory } from '../../src/lesson/memory.ts';
import { layOut } from '../../src/pages/debrief/replayed.ts';
import { scenarioOf } from '../../src/pages/fly/sheets/scenario-of-settings.ts';
import { type Settings, settingsSchema } from '../../src/pages/settings.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import type { Recording } from '../../src/session/recording.ts';
import type { ControlSource } from '../../src/session/source.ts';
import type { Model } from '../../src/simulation/model.ts';
import { STEP_HZ } from '../../src/simulation/scenario.ts';
import { seeAgain } from '../../src/study/flown.ts';
import { besideWith, flyEverything } from '../support/everything-done.ts';

/** As text that keeps what JSON does not: not-a-number and the infinities. */
const written = (memory: LessonMemory | null): string =>
  JSON.stringify(memory, (_, value) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );

/** The model pilot with the others that the settings ask for, to its end or so far; somebody makes the calls. */
const flyWithOthers = (settings: Settings, seconds = 600): Flight => {
  const { scenario, model } = scenarioOf(settings);
  const source = (own: Model, plan: CircuitPlan) => createPilot(own, plan) as ControlSource<unknown>;
  const flight = beginFlight({ scenario, model, source, otherPilot, judgedBy: null });
  const beside = besideWith();
  while (flight.session.step < seconds * STEP_HZ && !isOver(flight)) {
    const { session, lesson } = flight;
    if (session.step % 15 === 0)
      beside({
        s: ownAircraft(flight).snapshot,
        m: lessonMemory(flight),
        lesson,
        session,
        tell: (kind, value) => tellFlight(flight, kind, value),
      });
    flyStep(flight);
    if (isLookStep(flight)) noteEnd(flight, false);
  }
  return flight;
};

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

describe('a flight with another in the circuit', () => {
  const settings = v.parse(settingsSchema, { start: 'downwind', others: 1, radio: 'towered' });
  const flight = flyWithOthers(settings);
  const { recording } = ownAircraft(flight).recorder;
  const live = written(lessonMemory(flight));

  it('was told of the other, and landed', () => {
    const { procedures, touchdowns } = lessonMemory(flight);
    expect(procedures?.nearest[0]?.metres).toBeGreaterThan(0);
    expect(touchdowns).toHaveLength(1);
  });

  it('is the same in the debrief and in the study', () => {
    expect(inTheDebrief(recording)).toBe(live);
    expect(inTheStudy(recording)).toBe(live);
  });

  it('is taken up at any instant with the other where it was', () => {
    const anew = flyWithOthers(settings, 150);
    const { model, plan } = anew;
    const source = createPilot(model, plan) as ControlSource<unknown>;
    const asked = { model, source, otherPilot, judgedBy: null };
    const kept = resumeFlight(ownAircraft(anew).recorder.recording, 100 * STEP_HZ, asked, () => {});
    setBack(anew, 100 * STEP_HZ, source);
    for (const taken of [kept, anew]) {
      while (taken.session.step < 150 * STEP_HZ) flyStep(taken);
    }
    const other = (taken: Flight) => taken.session.aircraft[1]!;
    expect(other(kept).state).toEqual(other(anew).state);
    expect(other(kept).sourceMemory).toEqual(other(anew).sourceMemory);
    expect(written(lessonMemory(kept))).toBe(written(lessonMemory(anew)));
  });
});
