import { describe, expect, test } from 'vitest';
import { withCircuit } from '../../../src/circuit/brief/custom.ts';
import { choiceOf } from '../../../src/pages/brief/text.ts';
import { cardOfDraft, cardOfModel, cardWrongs, draftOfCard } from '../../../src/pages/own/card-draft.ts';
import { lengthField, numberField } from '../../../src/pages/own/fields.ts';
import {
  aerodromeOfDraft,
  draftOfAerodrome,
  NEW_RUNWAY,
  otherDesignator,
  type RunwayDraft,
  runwayWrongs,
  usualAimM,
} from '../../../src/pages/own/runway-draft.ts';
import { circuitOptions } from '../../../src/pages/settings.ts';
import { mFromNmi, radFromDeg } from '../../../src/units/conversions.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed } from '../../support/aeroplanes.ts';
import { plannedCircuit } from '../../support/circuits.ts';

const typed = (changes: Partial<RunwayDraft> = {}): RunwayDraft => ({
  ...NEW_RUNWAY,
  title: 'Home field',
  designator: '7',
  length: '3000 ft',
  elevation: '1,250',
  ...changes,
});

describe('a field', () => {
  test('takes numbers as people write them', () => {
    const read = numberField('elevation', -1300, 15000);
    expect(['1250', '1,250', ' +12.5 ', '-30', '−30'].map(read)).toEqual([1250, 1250, 12.5, -30, -30]);
  });

  test.each(['', 'abc', '12x', '1e3', '20000', '1,25', '--1'])(
    'refuses %j with its name, what is expected and found',
    (text) => {
      expect(() => numberField('elevation', -1300, 15000)(text)).toThrow(
        /^elevation must be a number from -1300 to 15000, was (nothing|".*")$/,
      );
    },
  );

  test('takes metres, or feet that say so', () => {
    const read = lengthField('length', 200, 5000);
    // The international foot of 1959: 3,000 ft are 914.4 m.
    expect([read('920'), read('920 m'), read('3000 ft'), read('3,000ft')]).toEqual([920, 920, 914, 914]);
    expect(() => read('100')).toThrow('length must be 200 to 5000 m (or feet, like 3000 ft), was "100"');
  });
});

describe('the runway form', () => {
  test('needs a name, a designator, a length and an elevation, and has the rest', () => {
    const place = aerodromeOfDraft(typed());
    expect(place.id).toBe('own-home-field');
    expect(place.elevationFt).toBe(1250);
    expect(place.runway.lengthM).toBe(914);
    expect(place.runway.ends.map((end) => [end.designator, end.headingDegM])).toEqual([
      ['07', 70],
      ['25', 250],
    ]);
    for (const key of ['title', 'designator', 'length', 'elevation'] as const)
      expect(() => aerodromeOfDraft(typed({ [key]: '' })), key).toThrow(/, was nothing|must be/);
  });

  test.each([
    ['22', '04'],
    ['04L', '22R'],
    ['18C', '36C'],
    ['36', '18'],
    ['09R', '27L'],
  ])('knows the other end of %s is %s', (one, other) => {
    expect(otherDesignator(one)).toBe(other);
    expect(otherDesignator(other)).toBe(one);
  });

  test('puts the aim point where the length has it', () => {
    // ICAO Annex 14 volume I, 5.2.5 (from memory): 150, 250, 300, 400 m by landing distance available.
    expect([700, 900, 1500, 3000].map(usualAimM)).toEqual([150, 250, 300, 400]);
    const withLights = aerodromeOfDraft(
      typed({ ends: [{ ...NEW_RUNWAY.ends[0], lights: 'PAPI', lightsPast: '280' }, NEW_RUNWAY.ends[1]] }),
    );
    expect(withLights.runway.ends[0].aimPastThresholdM).toBe(280);
    expect(withLights.runway.ends[0].slopeLights?.angleDeg).toBe(3);
  });

  test.each([
    [{ heading: '95' }, /heading must be within 5 degrees of runway 07, was "95"/],
    [{ designator: '37' }, /runway must be 01 to 36/],
    [{ slope: '9' }, /slope, percent up along the first end, must be a number from -5 to 5, was "9"/],
    [{ length: 'long' }, /length must be 200 to 5000 m/],
  ] as const)('refuses %j in one sentence', (changes, sentence) => {
    expect(() => aerodromeOfDraft(typed(changes))).toThrow(sentence);
    expect(Object.keys(runwayWrongs(typed()).runway)).toEqual([]);
  });

  test('says every wrong field at once', () => {
    expect(Object.keys(runwayWrongs(typed({ designator: 'x', slope: 'y' })).runway)).toEqual([
      'designator',
      'slope',
    ]);
  });

  test('leaves the woods and fields of a place that was taken in where they are', () => {
    const place = aerodromeNamed('curlew-sands');
    expect(place.features.length).toBeGreaterThan(0);
    const changed = aerodromeOfDraft({ ...draftOfAerodrome(place), circuitHeight: '800' });
    expect(changed.features).toEqual(place.features);
    expect(changed.circuitHeightFt).toBe(800);
  });

  test('opens what it kept', () => {
    for (const id of ['curlew-sands', 'dunlin-ridge', 'plover-meadow', 'ptarmigan-flat']) {
      const place = aerodromeNamed(id);
      const again = aerodromeOfDraft(draftOfAerodrome(place));
      expect(again.runway.ends.map((end) => end.designator)).toEqual(
        place.runway.ends.map((end) => end.designator),
      );
      expect(again.circuitHeightFt).toBe(place.circuitHeightFt);
      expect(aerodromeOfDraft(draftOfAerodrome(again))).toEqual(again);
    }
  });
});

describe('the card form', () => {
  test('begins with the model’s figures and keeps what is typed', () => {
    const draft = { ...cardOfModel(aeroplaneNamed('sandpiper')), title: 'Our trainer' };
    const card = cardOfDraft({
      ...draft,
      speeds: { ...draft.speeds, finalKt: '63' },
      rpm: { ...draft.rpm, base: '1,700' },
    });
    expect([card.speeds.finalKt, card.rpm.base, card.rpm.downwind]).toEqual([63, 1700, null]);
    expect(cardOfDraft(draftOfCard(card))).toEqual(card);
  });

  test('says which speed is wrong', () => {
    const draft = cardOfModel(aeroplaneNamed('sandpiper'));
    const wrongs = cardWrongs({ ...draft, speeds: { ...draft.speeds, baseKt: '7' } });
    expect(wrongs.speeds.baseKt).toBe('speed base, kt, must be a number from 30 to 150, was "7"');
    expect(Object.keys(wrongs.speeds)).toEqual(['baseKt']);
  });
});

describe('a way out of the conflict', () => {
  test('kept as a setting plans the very circuit that was offered', () => {
    const tight = { spacingM: mFromNmi(0.6) };
    const plan = plannedCircuit('curlew-sands', '22', {}, tight);
    const offered = plan.conflict?.waysOut.filter((way) => way.options !== null) ?? [];
    expect(offered.map((way) => way.id)).toContain('wider');
    expect(offered.map((way) => way.id)).toContain('longer');
    for (const way of offered) {
      const direct = plannedCircuit('curlew-sands', '22', {}, way.options!);
      const kept = circuitOptions(choiceOf(way.options!));
      const again = plannedCircuit('curlew-sands', '22', {}, kept);
      expect(Math.abs(again.approachRad - direct.approachRad), way.id).toBeLessThan(radFromDeg(0.01));
      expect(Math.abs(again.spacingM - direct.spacingM), way.id).toBeLessThan(1);
      const custom = withCircuit(aerodromeNamed('curlew-sands'), kept).circuit;
      expect(custom.spacingNmi, way.id).toBeCloseTo(direct.spacingM / 1852, 3);
    }
  });
});
