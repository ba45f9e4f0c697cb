import { describe, expect, test } from 'vitest';
import {
  aeroplaneOfCard,
  isOwnFile,
  OWN_FILE_KIND,
  ownFileText,
  parseOwnFile,
  type SpeedsCard,
} from '../../../src/formats/own-file.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';

const model = aeroplaneNamed('sandpiper');
const card: SpeedsCard = {
  id: 'own-trainer',
  title: 'Our trainer',
  flownBy: 'sandpiper',
  speeds: { ...model.speeds, finalKt: 63, downwindKt: 75 },
  plan: { takeOffStage: 1, downwindStage: 0, baseStage: 1, finalStage: 2, landingStage: 2 },
  rpm: { downwind: 2300, base: 1700, final: null },
  limits: { crosswindKt: 12, tailwindKt: 3 },
};
const place = aerodromeNamed('plover-meadow');

describe('one file of own places and cards', () => {
  test('comes back as it went out', () => {
    const text = ownFileText({ aerodromes: [place], cards: [card] });
    const json = JSON.parse(text);
    expect(isOwnFile(json)).toBe(true);
    expect(parseOwnFile(json, 'mine.json')).toEqual({ aerodromes: [place], cards: [card] });
  });

  test.each([
    [{}, /mine\.json: kind is missing/],
    [{ kind: 'other', version: 1, aerodromes: [], cards: [] }, /kind must be "?lapwing-own"?, was "other"/],
    [{ kind: OWN_FILE_KIND, version: 2, aerodromes: [], cards: [] }, /version must be 1, was 2/],
    [
      {
        kind: OWN_FILE_KIND,
        version: 1,
        aerodromes: [{ ...place, runway: { ...place.runway, widthM: -14 } }],
        cards: [],
      },
      /mine\.json, aerodromes\[0\]: runway\.widthM must be above 0, was -14/,
    ],
    [
      {
        kind: OWN_FILE_KIND,
        version: 1,
        aerodromes: [],
        cards: [{ ...card, rpm: { ...card.rpm, base: 'x' } }],
      },
      /mine\.json, cards\[0\]: rpm\.base must be .*, was "x"/,
    ],
    [{ kind: OWN_FILE_KIND, version: 1, aerodromes: [], cards: [], more: 1 }, /more is not a key/],
  ])('is refused in one sentence: %j', (json, sentence) => {
    expect(() => parseOwnFile(json, 'mine.json')).toThrow(sentence);
  });
});

describe('a card', () => {
  test('puts its speeds, flap plan, power and wind limits in place of the model’s, and leaves the model alone', () => {
    const own = aeroplaneOfCard(card, model);
    expect(own.speeds.finalKt).toBe(63);
    expect(own.plan).toEqual({ ...card.plan, baseRpm: 1700, cardRpm: { downwind: 2300, base: 1700 } });
    expect(own.limits).toEqual({ ...model.limits, crosswindKt: 12, tailwindKt: 3 });
    expect(own.title).toBe('Our trainer');
    for (const part of ['massKg', 'wing', 'lift', 'drag', 'flap', 'pitch', 'engine', 'propeller'] as const)
      expect(own[part]).toEqual(model[part]);
  });

  test('at odds with the model is refused in one sentence', () => {
    expect(() => aeroplaneOfCard({ ...card, plan: { ...card.plan, landingStage: 7 } }, model)).toThrow(
      /Our trainer: plan\.landingStage must be one of the flap stages 0 to 3, was 7/,
    );
    expect(() => aeroplaneOfCard({ ...card, speeds: { ...card.speeds, finalKt: 140 } }, model)).toThrow(
      /Our trainer: speeds\.finalKt must be at most \d+, the limit of flap 20/,
    );
  });
});
