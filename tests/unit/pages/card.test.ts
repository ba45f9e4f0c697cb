import { describe, expect, it } from 'vitest';
import type { Emergency } from '../../../src/flight/emergency.ts';
import { LEG_NAMES } from '../../../src/lesson/names.ts';
import { itemsOf } from '../../../src/lesson/procedures/check-lists.ts';
import { cardFor, legWords } from '../../../src/pages/fly/card/card-data.ts';
import { goesAhead } from '../../../src/pages/fly/drawing/look.ts';
import { aeroplaneNamed, everyAeroplane } from '../../support/aeroplanes.ts';

const setting = (aeroplane = aeroplaneNamed('sandpiper')) => ({
  aeroplane,
  runway: '22',
  side: 'right' as const,
  callWords: 'icao' as const,
  runwayHeadingDegM: 220,
  qnhHpa: 1013,
  circuitAltitudeFt: 1020,
  crosswindTurnFt: 500,
  drift: { crosswind: null, downwind: null, base: null },
  approachKt: 65,
  descent: { rpm: 1950, fpm: 350 },
  baseRpm: 1880,
});

type Setting = Parameters<typeof cardFor>[1];

describe('the sequence card', () => {
  it('has words for every leg the lesson can name', () => {
    for (const leg of LEG_NAMES) {
      const card = cardFor(leg, setting());
      expect(card.where.length, leg).toBeGreaterThan(3);
      expect(card.next.length, leg).toBeGreaterThan(3);
    }
  });

  it('has no two lines of one name, so that a tick means one of them', () => {
    for (const leg of LEG_NAMES) {
      const ids = cardFor(leg, setting()).lines.map((line) => line.id);
      expect(new Set(ids).size, leg).toBe(ids.length);
    }
  });

  it('says where the descent begins and with what power, where it begins on downwind', () => {
    const words = (descent: Setting['descent']): string =>
      cardFor('downwind', { ...setting(), descent })
        .lines.map(({ text }) => text)
        .join('; ');
    expect(words({ rpm: 1950, fpm: 350 })).toContain('abeam the threshold power back: 1,950 rpm');
    expect(words(null)).not.toContain('abeam the threshold');
  });

  it('says "right-hand downwind" in a right-hand circuit (CAP 413)', () => {
    const call = cardFor('downwind', setting()).lines.find((line) => line.kind === 'call');
    expect(call?.text).toContain('right-hand downwind');
  });

  it('says where downwind is called, by whose words they are (CAP 493; AIM 4-1-9)', () => {
    const call = (callWords: Setting['callWords']): string | undefined =>
      cardFor('downwind', { ...setting(), callWords }).lines.find(({ kind }) => kind === 'call')?.text;
    expect(call('icao')).toContain('abeam the upwind end');
    expect(call('faa')).toBe('“right downwind” on entering it');
  });

  it('speaks of carburettor heat only where there is a carburettor', () => {
    for (const aeroplane of everyAeroplane()) {
      const words = LEG_NAMES.flatMap((leg) =>
        cardFor(leg, setting(aeroplane)).lines.map((line) => line.text),
      );
      const says = words.some((text) => /carburettor/.test(text));
      expect(says, aeroplane.id).toBe(aeroplane.engine.carburettor);
    }
  });

  it('puts power first in a go-around (FAA-H-8083-3C ch. 9: power, attitude, configuration)', () => {
    const lines = cardFor('go-around', setting()).lines;
    const place = (words: RegExp): number =>
      lines.findIndex(({ kind, text }) => kind === 'check' && words.test(text));
    expect(place(/^power: full/)).toBeGreaterThanOrEqual(0);
    expect(place(/^attitude/)).toBeGreaterThan(place(/^power: full/));
    expect(place(/^configuration: flap/)).toBeGreaterThan(place(/^attitude/));
    expect(lines.at(-1)).toMatchObject({ kind: 'call', text: '“going around”' });
  });

  it('has the checks that the brief prints and the lesson watches, item for item, in every aeroplane', () => {
    for (const aeroplane of everyAeroplane()) {
      const on = (leg: string) =>
        cardFor(leg, setting(aeroplane))
          .lines.filter(({ kind, id }) => kind === 'check' && id !== 'look')
          .map(({ id }) => id);
      const legs = {
        upwind: 'after-take-off',
        downwind: 'downwind',
        final: 'final',
        stopped: 'after-landing',
      } as const;
      for (const [leg, list] of Object.entries(legs))
        expect(on(leg), leg).toEqual(itemsOf(list, aeroplane).map(({ id }) => id));
    }
  });

  it('names a turn by what it leads to', () => {
    expect(legWords('turn-to-base')).toBe('Turn to base');
    expect(cardFor('turn-to-base', setting()).next).toContain('base');
  });
});

describe('an emergency', () => {
  it.each([
    ['engine-out', 'Engine failure', /gliding attitude, \d+ kt/],
    ['partial-power', 'Partial power', /\d+ kt by attitude/],
    ['abandoned', 'Take-off abandoned', /throttle closed, at once/],
  ] as const)('has a card of its own: %s', (id, where, first) => {
    const card = cardFor(id, setting());
    expect(card.where).toBe(where);
    expect(card.lines[0]?.text).toMatch(first);
    // Nothing of it asks for power that is not there, for a check or for a call
    for (const { kind, text } of card.lines) {
      expect(kind).toBe('do');
      expect(text).not.toMatch(/rpm/);
    }
  });

  it('turns the look ahead when there is no power to go anywhere else', () => {
    expect(['engine-out', 'abandoned', 'partial-power', ''].map((id) => goesAhead(id as Emergency))).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});
