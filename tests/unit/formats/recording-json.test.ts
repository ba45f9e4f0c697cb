// Base64: the test vectors of RFC 4648 section 10.
import { describe, expect, it } from 'vitest';
import {
  base64FromBytes,
  base64FromDoubles,
  bytesFromBase64,
  doublesFromBase64,
} from '../../../src/formats/base64.ts';
import { jsonFromPlain, plainFromJson } from '../../../src/formats/plain-json.ts';
import { parseRecording, recordingText } from '../../../src/formats/recording-json.ts';
import { createScript } from '../../../src/session/script.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import { scenarioOf } from '../../support/flight.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('base64', () => {
  it.each([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('writes and reads %j as RFC 4648 has it', (plain, coded) => {
    expect(base64FromBytes(bytes(plain))).toBe(coded);
    expect([...bytesFromBase64(coded, 'x')]).toEqual([...bytes(plain)]);
  });

  it('agrees with Node on every length', () => {
    for (let n = 0; n < 70; n += 1) {
      const some = Uint8Array.from({ length: n }, (_, i) => (i * 151 + n) & 255);
      expect(base64FromBytes(some)).toBe(Buffer.from(some).toString('base64'));
    }
  });

  it('keeps every bit of a double', () => {
    const odd = Float64Array.of(
      0.1,
      -0,
      Number.MIN_VALUE,
      Number.MAX_VALUE,
      Math.PI,
      Number.NEGATIVE_INFINITY,
    );
    const back = doublesFromBase64(base64FromDoubles(odd), 'x');
    odd.forEach((value, i) => {
      expect(Object.is(back[i], value)).toBe(true);
    });
  });

  it('says what is no base64', () => {
    expect(() => bytesFromBase64('a*c=', 'k.state')).toThrow('k.state must be base64');
  });
});

describe('memories as JSON', () => {
  it('come back the same, the odd numbers too', () => {
    const memory = {
      a: [1, -0, Number.NaN],
      b: { c: null, d: 'x', e: Float64Array.of(1, 2.5) },
      f: undefined,
      g: true,
    };
    const back = plainFromJson(JSON.parse(JSON.stringify(jsonFromPlain(memory))), 'm') as typeof memory;
    expect(back).toEqual(memory);
    expect(Object.is(back.a[1], -0)).toBe(true);
    expect(back.b.e).toBeInstanceOf(Float64Array);
  });
});

describe('a recording as text', () => {
  const session = createSession([
    { scenario: scenarioOf({ start: {} }), source: createScript([]), folds: [] },
  ]);
  for (let i = 0; i < 700; i += 1) tick(session);
  const text = recordingText(session.aircraft[0]!.recorder.recording);

  it('comes back as the recording it was', () => {
    expect(recordingText(parseRecording(JSON.parse(text), 'r.json'))).toBe(text);
  });

  it.each([
    [
      'format',
      'something',
      /r.json: format must be lapwing-recording|r.json: format must be "lapwing-recording"/,
    ],
    ['version', 99, /r.json: version must be 1, was 99/],
    ['steps', -1, /r.json: steps must be at least 0, was -1/],
    ['keyframes', [], /r.json: keyframes must be at least 1 long/],
    ['scenario', 5, /r.json: scenario.* must be an object, was 5/],
  ])('is refused with a sentence when %s is %j', (key, value, sentence) => {
    expect(() => parseRecording({ ...JSON.parse(text), [key]: value }, 'r.json')).toThrow(sentence);
  });
});
