// What is briefed is what is flown, and the same again after a reload: the settings alone decide the flight.

import * as v from 'valibot';
import { beforeAll, describe, expect, it } from 'vitest';
import { EXERCISES } from '../../../src/exercises.ts';
import { takesAnyAir } from '../../../src/lesson/exercises/own-day.ts';
import { asFlown } from '../../../src/pages/as-flown.ts';
import { briefOfSettings } from '../../../src/pages/brief/brief-of-settings.ts';
import { chosenFlight } from '../../../src/pages/chosen-flight.ts';
import { loadExercises } from '../../../src/pages/exercises-room.ts';
import { type Settings, settingsSchema } from '../../../src/pages/settings.ts';

const settings = (changes: Partial<Settings>): Settings => ({ ...v.parse(settingsSchema, {}), ...changes });

describe('the flight that the settings ask for', () => {
  beforeAll(() => loadExercises());

  it('is the circuit of the set-up where no exercise is chosen, or one that there is no more', () => {
    const plain = chosenFlight(settings({ wind: '250/11' })).scenario;
    expect(plain.exercise).toBe('normal-circuit');
    expect(plain.weather.windKt).toBe(11);
    expect(chosenFlight(settings({ wind: '250/11', exercise: 'gone' })).scenario).toEqual(plain);
  });

  it.each(EXERCISES.map(({ id }) => id))('is one for brief, flight and reload: %s', (exercise) => {
    const chosen = settings({ exercise, exerciseSeed: 7 });
    const { scenario } = chosenFlight(chosen);
    const kept = v.parse(settingsSchema, JSON.parse(JSON.stringify(chosen)));
    expect(chosenFlight(kept).scenario).toEqual(scenario);
    const { request, start } = briefOfSettings(chosen);
    const { aeroplane, aerodrome, weather, runway } = scenario;
    expect(request).toMatchObject({ aeroplane, aerodrome, weather, runway });
    expect(start ?? 'line-up').toEqual(scenario.start.at);
  });

  it('is drawn anew with another seed', () => {
    const winds = [1, 2, 3, 4].map(
      (exerciseSeed) =>
        chosenFlight(settings({ exercise: 'crosswind-circuit', exerciseSeed })).scenario.weather.windFromDegM,
    );
    expect(new Set(winds).size).toBeGreaterThan(1);
  });

  it('is flown in the typed weather where that is asked for and the exercise allows it', () => {
    const typed = { wind: '250/11', qnh: '995', inMyWeather: true } as const;
    const { weather } = chosenFlight(settings({ ...typed, exercise: 'final-and-landing' })).scenario;
    expect(weather).toMatchObject({ windFromDegM: 250, windKt: 11, qnhHpa: 995 });
    // What the gusty day is about is its gusts
    const gusty = chosenFlight(settings({ ...typed, exercise: 'gusty-day' })).scenario.weather;
    expect(gusty.gustKt).not.toBeNull();
  });

  it('has the circuit chosen for the aerodrome, except where the exercise brings its own', () => {
    const circuit = { spacingNmi: 1.3, approachDeg: 5 };
    const of = (exercise: string) => chosenFlight(settings({ exercise, circuit })).scenario.aerodrome.circuit;
    expect(of('final-and-landing')).toMatchObject(circuit);
    const { spacingNmi } = chosenFlight(settings({ exercise: 'slip-to-lose-height' })).scenario.aerodrome
      .circuit;
    // assets/exercises/slip-to-lose-height.json: 4 degrees
    expect(of('slip-to-lose-height')).toMatchObject({ spacingNmi, approachDeg: 4 });
  });

  it('says in a sentence what is wrong with a typed wind, and only where it counts', () => {
    const wrong = { wind: 'abc', exercise: 'final-and-landing' } as const;
    expect(() => chosenFlight(settings({ ...wrong, inMyWeather: true }))).toThrow(
      /wind must be like 220\/08/,
    );
    expect(() => chosenFlight(settings(wrong))).not.toThrow();
  });
});

describe('the brief of an exercise', () => {
  it('has no power and no slope in a glide', () => {
    const { brief } = briefOfSettings(settings({ exercise: 'glide-approach', exerciseSeed: 7 }));
    const ways = brief.legs.map(({ stretches }) => stretches.at(-1)?.way);
    expect(ways.slice(-2)).toEqual(['gliding', 'gliding']);
    expect(brief.glide).toMatch(/^Glide: throttle closed/);
    expect(brief.legs.at(-2)?.words.checks.join(' ')).not.toMatch(/power back/);
  });

  it('keeps to itself what is called and what stops, and when', () => {
    const told = (id: string): string =>
      JSON.stringify(briefOfSettings(settings({ exercise: id, exerciseSeed: 3 })).brief);
    const plain = JSON.stringify(
      briefOfSettings(settings({ exercise: 'normal-circuit', exerciseSeed: 3 })).brief,
    );
    // Neither the fault nor the instruction changes anything of what is briefed
    for (const id of ['partial-power', 'radio-failure', 'abandoned-take-off', 'go-around'])
      expect(told(id)).toBe(plain);
  });
});

describe('an exercise that trains what a flight has shown', () => {
  beforeAll(() => loadExercises());
  const flown = chosenFlight(
    settings({
      aeroplane: 'whimbrel',
      aerodrome: 'plover-meadow',
      wind: '300/13',
      qnh: '998',
      temperature: '4',
    }),
  ).scenario;
  const trainedAfter = (exercise: string, now = settings({})) =>
    chosenFlight({ ...now, ...asFlown(flown, now), exercise, inMyWeather: true }).scenario;

  it('has its place, aeroplane and air, where the exercise allows it', () => {
    const trained = trainedAfter('final-and-landing');
    expect(trained.aeroplane.id).toBe('whimbrel');
    expect(trained.aerodrome.id).toBe(flown.aerodrome.id);
    expect(trained.runway).toBe(flown.runway);
    expect(trained.weather).toEqual(flown.weather);
  });

  it('keeps its own day where that is what it is about', () => {
    const gusty = trainedAfter('gusty-day');
    expect(gusty.aeroplane.id).toBe('whimbrel');
    expect(gusty.weather.gustKt).not.toBeNull();
  });

  it('keeps its own air where the wind has to come from the side', () => {
    const takes = (id: string) => takesAnyAir(EXERCISES.find((each) => each.id === id)!);
    expect(['crosswind-circuit', 'gusty-day'].map(takes)).toEqual([false, false]);
    expect(['normal-circuit', 'final-and-landing'].map(takes)).toEqual([true, true]);
  });

  it('drops a circuit that was chosen for another aerodrome', () => {
    const now = settings({ circuit: { spacingNmi: 0.5 } });
    expect(asFlown(flown, now).circuit).toBeNull();
    expect(asFlown(flown, { ...now, aerodrome: flown.aerodrome.id })).not.toHaveProperty('circuit');
  });
});
