// Power by a card of one's own: briefed and assessed where the card names it (issue "The lesson", 2).
import { describe, expect, it } from 'vitest';
import { aerodromeNamed, aeroplaneNamed } from '../../../src/catalogue.ts';
import { briefOf } from '../../../src/circuit/brief/brief.ts';
import { planCircuit } from '../../../src/circuit/plan.ts';
import { aeroplaneOfCard, type SpeedsCard } from '../../../src/formats/own-file.ts';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { itemTitle } from '../../../src/lesson/judge/item-words.ts';
import { lessonOfScenario } from '../../../src/lesson/lesson-of.ts';
import type { LessonMemory } from '../../../src/lesson/memory.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import type { ControlSource, Fold } from '../../../src/session/source.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { standardDay } from '../../../src/simulation/performance/standard-day.ts';
import { MODEL_VERSION, type Scenario } from '../../../src/simulation/scenario.ts';
import { rpmFromRevps } from '../../../src/units/conversions.ts';

const model = aeroplaneNamed('sandpiper');

/** A calm circuit by the model pilot with this card; rows of power, and what the plan needs. */
const flown = (rpm: SpeedsCard['rpm']) => {
  const card: SpeedsCard = {
    id: 'own-trainer',
    title: 'our trainer',
    flownBy: model.id,
    speeds: model.speeds,
    plan: {
      takeOffStage: model.plan.takeOffStage,
      downwindStage: model.plan.downwindStage,
      baseStage: model.plan.baseStage,
      finalStage: model.plan.finalStage,
      landingStage: model.plan.landingStage,
    },
    rpm,
    limits: model.limits,
  };
  const { crosswindKt, tailwindKt } = model.limits;
  const aerodrome = aerodromeNamed('curlew-sands');
  const scenario: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'normal-circuit',
    aeroplane: aeroplaneOfCard({ ...card, limits: { crosswindKt, tailwindKt } }, model),
    aerodrome,
    runway: '22',
    weather: { ...standardDay(aerodrome.elevationFt), windFromDegM: 220, windKt: 5 },
    start: { at: 'line-up', trimmed: true, leg: 'line-up' },
    seed: 7,
    assists: { rudder: true },
    failures: [],
    circuits: 1,
  };
  const ready = prepare(scenario);
  const plan = planCircuit(ready.shape, scenario.aeroplane, aerodrome, ready.runway, scenario.weather);
  const lesson = lessonOfScenario(scenario, ready.runway, plan, null);
  const source = createPilot(ready, plan) as ControlSource<unknown>;
  const session = createSession([{ scenario, source, folds: [createLessonFold(lesson) as Fold<unknown>] }]);
  const m = session.aircraft[0]?.foldMemories[0] as LessonMemory;
  for (let i = 0; i < 450 * 60 && m.stop === null && m.ended === null; i += 1) tick(session);
  return assess(m, lesson).items.filter(({ id }) => id.endsWith('-rpm'));
};

/** What the brief says of power: level on downwind, on base, and on final with the flap that is landed with. */
const briefed = (): Record<'downwind' | 'base' | 'final', number> => {
  const aerodrome = aerodromeNamed('curlew-sands');
  const weather = { ...standardDay(aerodrome.elevationFt), windFromDegM: 220, windKt: 5 };
  const { legs } = briefOf({ aeroplane: model, aerodrome, weather, runway: '22' });
  const rpm = (leg: string, at: number): number =>
    Math.round(rpmFromRevps(legs.find((each) => each.leg === leg)?.stretches.at(at)?.revps ?? 0));
  return { downwind: rpm('downwind', 0), base: rpm('base', 0), final: rpm('final', -1) };
};

describe('the power of a card', () => {
  it('has no row where the card names none', () => {
    expect(flown({ downwind: null, base: null, final: null })).toEqual([]);
  });

  it('is green flown as the card says, which here is what the model needs, and red 400 rpm away', () => {
    const needs = briefed();
    expect(flown(needs).map(({ id, band }) => `${id} ${band}`)).toEqual([
      'downwind-rpm green',
      'base-rpm green',
      'final-rpm green',
    ]);
    const rows = flown({ downwind: needs.downwind + 400, base: null, final: null });
    expect(rows.map(({ id, band }) => `${id} ${band}`)).toEqual(['downwind-rpm red']);
    expect(rows.map(itemTitle)).toEqual(['Downwind: power by the card']);
  });
});
