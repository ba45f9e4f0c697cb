// What keyboards write where: the usual layouts of each language, common practice, from memory.
import { describe, expect, it } from 'vitest';
import { createKeyPlaces } from '../../../src/input/key-place.ts';

describe('the place of a key', () => {
  it.each([
    ['Russian W', 'ц', 'KeyW', 'w'],
    ['Russian W with Shift', 'Ц', 'KeyW', 'w'],
    ['Russian F', 'а', 'KeyF', 'f'],
    ['Greek W', 'ς', 'KeyW', 'w'],
    ['Greek S', 'σ', 'KeyS', 's'],
    ['Hebrew S', 'ד', 'KeyS', 's'],
    ['Russian comma', 'б', 'Comma', ','],
    ['Arabic digit', '١', 'Digit1', '1'],
  ])('counts for %s', (_, key, code, place) => {
    expect(createKeyPlaces()({ key, code })).toBe(place);
  });

  it.each([
    ['AZERTY, Q stands where A is', 'a', 'KeyQ'],
    ['AZERTY, Z stands where W is', 'z', 'KeyW'],
    ['AZERTY, an accent on a digit', 'é', 'Digit2'],
    ['QWERTZ, Z stands where Y is', 'z', 'KeyY'],
    ['QWERTZ, an umlaut', 'ü', 'BracketLeft'],
    ['Dvorak, a mark on a letter', ';', 'KeyZ'],
    ['US', 'w', 'KeyW'],
    ['an arrow', 'ArrowUp', 'ArrowUp'],
    ['a digit', '0', 'Digit0'],
    ['a Russian letter where none is in Latin', 'х', 'BracketLeft'],
  ])('does not count for %s', (_, key, code) => {
    expect(createKeyPlaces()({ key, code })).toBeNull();
  });

  it('counts for marks on letters too, while the letters are not Latin', () => {
    const place = createKeyPlaces();
    const greekQ = { key: ';', code: 'KeyQ' };
    expect(place(greekQ)).toBeNull();
    place({ key: 'σ', code: 'KeyS' });
    expect(place(greekQ)).toBe('q');
    place({ key: 's', code: 'KeyS' });
    expect(place(greekQ)).toBeNull();
  });
});
