// What the model pilot shows beside the flying: every check worked and said, every call made at its place, the lookout
// before every turn (issue "A teacher worth imitating", 2). The long run flies every exercise in every aeroplane, with
// and without a tower, and prints the counts.
import { afterAll, describe, expect, it } from 'vitest';
import { AEROPLANES, EXERCISES, exerciseOf } from '../../src/catalogue.ts';
import { setBack } from '../../src/flight/begin.ts';
import { doneOf } from '../../src/flight/done.ts';
import { type Flight, lessonMemory, ownAircraft } from '../../src/flight/flight.ts';
import { modelPilot } from '../../src/flight/model-pilot.ts';
import { LEFT, resultOfFlight } from '../../src/flight/result.ts';
import { flyStep } from '../../src/flight/run.ts';
import { flyOrder } from '../../src/headless/flight.ts';
import { scenarioPlan } from '../../src/lesson/exercises/exercise-scenario.ts';
import { PROCEDURE_RULES } from '../../src/lesson/judge/rules/procedures.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import { layOut } from '../../src/pages/debrief/replayed.ts';
import { prepare } from '../../src/simulation/model.ts';
import {
  callsShown,
  checksShown,
  demonstrated,
  lookoutsShown,
  shownExercise,
} from '../support/demonstrated.ts';

const LONG = process.env.LAPWING_LONG === '1';

const missingOf = (flight: Flight): readonly string[] =>
  [checksShown(flight), callsShown(flight), lookoutsShown(flight)].flatMap(({ missing }) => missing);

const redOf = (flight: Flight): readonly string[] =>
  resultOfFlight(flight, exerciseOf(flight.scenario), 0, LEFT)
    .items.filter(({ band }) => band === 'red')
    .map(({ id }) => id);

/** Red rows of checks, calls and lookout, their order and the height with heads in included. */
const besideOf = (flight: Flight): readonly string[] =>
  redOf(flight).filter((id) => PROCEDURE_RULES.some((rule) => rule.id === id));

describe('a normal circuit, shown', () => {
  const flight = demonstrated(shownExercise('normal-circuit', 1));
  const { recording } = ownAircraft(flight).recorder;

  it('leaves nothing out, and what is judged of it is inside', () => {
    expect(missingOf(flight)).toEqual([]);
    expect(checksShown(flight).due).toBeGreaterThan(30);
    expect(callsShown(flight).due).toBe(4);
    expect(lookoutsShown(flight).due).toBe(4);
    expect(redOf(flight)).toEqual([]);
  });

  it('does the check before take-off at the pace of a person, before the wheels roll', () => {
    const list = lessonMemory(flight).procedures?.lists.find((each) => each.list === 'before-take-off');
    const times = list?.items.map(({ doneS }) => doneS ?? Number.NaN) ?? [];
    const gaps = times.slice(1).map((atS, i) => atS - (times[i] as number));
    for (const gap of gaps) expect(gap).toBeGreaterThan(1.2);
    for (const gap of gaps) expect(gap).toBeLessThan(6);
    const ready = lessonMemory(flight).procedures?.calls.find(({ call }) => call === 'ready');
    expect(ready?.saidS).toBeGreaterThan(Math.max(...times));
    const roll = lessonMemory(flight).stretches.find(({ leg }) => leg === 'take-off-roll');
    expect(roll?.fromS).toBeGreaterThan((ready?.saidS ?? Number.NaN) + 2);
  });

  it('works what is to be worked with the controls', () => {
    const items = lessonMemory(flight).procedures?.lists.flatMap((list) => list.items) ?? [];
    const notes = items.map(({ note }) => note).filter((note) => note !== '');
    expect(notes.filter((note) => note === 'pressure firm')).toHaveLength(2);
    expect(notes.some((note) => /^rpm fell by \d+$/.test(note))).toBe(true);
    expect(items.find(({ id }) => id === 'controls')?.kept).toBe(15);
  });

  it('is the same in the debrief, to the byte', () => {
    const memory = layOut(recording, DEFAULT_TOLERANCES).memory;
    expect(memory).toEqual(lessonMemory(flight));
  });

  it('is shown again alike from any instant', () => {
    for (const atS of [20, 100, 200]) {
      const anew = demonstrated(flight.scenario, atS + 40);
      const once = ownAircraft(anew);
      setBack(anew, atS * 60, modelPilot(anew.model, anew.plan));
      while (anew.session.step < (atS + 40) * 60) flyStep(anew);
      const again = ownAircraft(anew);
      expect(again.state).toEqual(once.state);
      expect(again.sourceMemory).toEqual(once.sourceMemory);
      expect(again.recorder.recording.events).toEqual(once.recorder.recording.events);
    }
  });
});

describe('with a tower, an altimeter left elsewhere and another in the circuit', () => {
  const choice = { radio: 'towered', surprises: true, others: 1 } as const;
  const scenario = shownExercise('normal-circuit', 3, 'whimbrel', choice);
  const flight = demonstrated(scenario);

  it('leaves nothing out, and sets the altimeter', () => {
    expect(Math.abs((scenario.procedures?.subscaleHpa ?? 0) - scenario.weather.qnhHpa)).toBeGreaterThan(3);
    expect(missingOf(flight)).toEqual([]);
    expect(besideOf(flight)).toEqual([]);
    expect(lessonMemory(flight).procedures?.subscaleHpa).toBe(Math.round(scenario.weather.qnhHpa));
    expect(lessonMemory(flight).procedures?.uncleared).toEqual([]);
  });

  it('is told by the command line, done by the model pilot', () => {
    const model = prepare(scenario);
    const plan = scenarioPlan(scenario);
    const order = { durationS: null, openLoop: false, trackHz: null, gpx: false };
    const { result } = flyOrder({ ...order, scenario, model, plan, source: modelPilot(model, plan) });
    expect(result.done.every(({ by }) => by === 'model')).toBe(true);
    const checks = result.done.filter(({ what }) => what === 'check').map(({ id }) => id);
    expect(checks).toEqual(
      doneOf(flight, 'model')
        .filter(({ what }) => what === 'check')
        .map(({ id }) => id),
    );
  });
});

/** What cannot be done as the card has it, and why. */
const OTHERWISE: readonly (readonly [exercise: string, left: RegExp])[] = [
  // Without power the propeller stays coarse and the flap in until the field is sure
  ['glide-approach', /^final\/(?:propeller|flap) /],
  // The flap stays up while the power is not enough for it; where it is less, base is turned at once
  ['partial-power', /^downwind\/|^before base /],
];

describe.runIf(LONG)('every exercise in every aeroplane', () => {
  const counts = { checks: [0, 0], calls: [0, 0], lookouts: [0, 0] };
  const cases = EXERCISES.flatMap(({ id }) => AEROPLANES.map((each) => [id, each.id] as const));

  it.each(cases)('%s, %s', (id, aeroplane) => {
    for (const radio of ['untowered', 'towered'] as const) {
      const flight = demonstrated(shownExercise(id, 1, aeroplane, { radio }));
      const parts = {
        checks: checksShown(flight),
        calls: callsShown(flight),
        lookouts: lookoutsShown(flight),
      };
      for (const [name, { due, missing }] of Object.entries(parts)) {
        const count = counts[name as keyof typeof counts];
        count[0] = (count[0] ?? 0) + due - missing.length;
        count[1] = (count[1] ?? 0) + due;
      }
      const left = missingOf(flight).filter(
        (name) => !OTHERWISE.some(([exercise, pattern]) => exercise === id && pattern.test(name)),
      );
      expect(left, radio).toEqual([]);
      if (!OTHERWISE.some(([exercise]) => exercise === id)) expect(besideOf(flight), radio).toEqual([]);
    }
  });

  afterAll(() => console.log(JSON.stringify(counts)));
});
