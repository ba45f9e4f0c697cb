// One number, one source: brief, card and coach ask for the same power of base on the same day, whatever the aeroplane.
import { describe, expect, it } from 'vitest';
import { AERODROMES, AEROPLANES } from '../../src/catalogue.ts';
import { askedRpm, saidRpm } from '../../src/circuit/said-rpm.ts';
import { powerWords } from '../../src/lesson/coach/patter.ts';
import { rpmText } from '../../src/pages/brief/text.ts';
import { cardFor } from '../../src/pages/fly/card/card-data.ts';
import { plannedCircuit } from '../support/circuits.ts';

const FIXED = AEROPLANES.filter(({ propeller }) => propeller.kind === 'fixed-pitch');

describe('the power of base', () => {
  it('is tried in every fixed-pitch aeroplane at every aerodrome', () => {
    expect(FIXED.length * AERODROMES.length).toBe(8);
  });

  it.each(FIXED.flatMap((a) => AERODROMES.map((place) => [a.id, place.id, a, place] as const)))(
    'of the %s at %s is the same in brief, card and coach',
    (_, __, aeroplane, place) => {
      const end = place.runway.ends[0];
      for (const wind of [{}, { windFromDegM: end.headingDegM, windKt: 14 }]) {
        const plan = plannedCircuit(place.id, end.designator, wind, {}, aeroplane);
        const { steady } = plan.legs.base;
        const brief = rpmText(steady.revps);
        const context = { lesson: { aeroplane }, s: {} } as Parameters<typeof powerWords>[0];
        const card = cardFor('base', {
          aeroplane,
          runway: end.designator,
          side: 'left',
          callWords: 'icao',
          runwayHeadingDegM: end.headingDegM,
          qnhHpa: 1013,
          circuitAltitudeFt: 1000,
          crosswindTurnFt: 500,
          drift: { crosswind: null, downwind: null, base: null },
          approachKt: 65,
          descent: null,
          baseRpm: askedRpm(aeroplane, 'base', steady),
        });
        expect(card.lines.map(({ text }) => text).join()).toContain(`${brief} rpm`);
        expect(powerWords(context, steady, 'base')).toBe(`${brief} rpm`);
        expect(saidRpm(steady.revps) % 10).toBe(0);
      }
    },
  );
});
