// How a school teaches the way down goes into every plan of that flight, and not into exercises with a circuit of their own.

import * as v from 'valibot';
import { expect, it } from 'vitest';
import { EXERCISES } from '../../../src/exercises.ts';
import { briefOfSettings } from '../../../src/pages/brief/brief-of-settings.ts';
import { exerciseFlight } from '../../../src/pages/exercise-flight.ts';
import { scenarioOf } from '../../../src/pages/fly/sheets/scenario-of-settings.ts';
import { type Settings, settingsSchema } from '../../../src/pages/settings.ts';

const settings = (changes: Partial<Settings>): Settings => ({ ...v.parse(settingsSchema, {}), ...changes });

it('is as the aerodrome has it until it is said', () => {
  const { aerodrome } = scenarioOf(settings({ aerodrome: 'curlew-sands' })).scenario;
  expect(aerodrome.circuit.descentFrom).toBe('abeam');
});

it('changes brief and flight alike', () => {
  const taught = settings({ aerodrome: 'curlew-sands', descentTaught: 'base-turn', finalDoneTaught: '500' });
  expect(scenarioOf(taught).scenario.aerodrome.circuit).toMatchObject({
    descentFrom: 'base-turn',
    finalTurnDoneFt: 500,
  });
  const { brief } = briefOfSettings(taught);
  expect(brief.plan.descentFrom).toBe('base-turn');
  // Level to the base turn, 500 ft and 3 degrees cannot all be had at one mile (the table of the lesson's design)
  expect(brief.conflict?.sentence).toBeTruthy();
});

it('leaves an exercise its own circuit', () => {
  const own = EXERCISES.filter(({ circuit, aerodrome }) => circuit !== undefined || aerodrome !== undefined);
  expect(own.length).toBeGreaterThan(0);
  for (const exercise of own) {
    const plain = exerciseFlight(exercise, settings({}));
    const taught = exerciseFlight(exercise, settings({ descentTaught: 'base-turn', finalDoneTaught: '300' }));
    expect(taught.aerodrome.circuit).toEqual(plain.aerodrome.circuit);
  }
});
