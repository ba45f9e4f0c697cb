// What exercises, coach and brief say about one thing is one thing, and the one that has a source (tests/reference).
import { describe, expect, it } from 'vitest';
import { AEROPLANES, aerodromeNamed, EXERCISES } from '../../src/catalogue.ts';
import { briefOf } from '../../src/circuit/brief/brief.ts';
import { answerSaid } from '../../src/lesson/procedures/wordings.ts';
import { standardDay } from '../../src/simulation/performance/standard-day.ts';
import {
  LIGHT_SIGNALS,
  POWER_IN_ROUND_OUT,
  RADIO_FAILURE_CODE,
  REJECTED_TAKE_OFF,
  TRIED_FIRST,
} from '../reference/circuit.ts';
import { flyWithProcedures } from '../support/procedures.ts';
import { saidInExercise } from '../support/said-in-exercise.ts';

const sentencesOf = (id: string): string[] =>
  EXERCISES.filter((exercise) => exercise.id === id).flatMap(({ aim, sayFirst, cautions }) => [
    aim,
    ...sayFirst,
    ...cautions,
  ]);

/** Of every aeroplane at one place, in still air. */
const briefs = () => {
  const aerodrome = aerodromeNamed('curlew-sands');
  const weather = standardDay(aerodrome.elevationFt);
  return AEROPLANES.map((aeroplane) => briefOf({ aeroplane, aerodrome, weather, runway: '22' }));
};

describe('power in the round-out', () => {
  const [[during, done]] = POWER_IN_ROUND_OUT.rows;

  it(`comes to idle ${during}, and is not closed before ${done}, wherever an exercise speaks of both`, () => {
    const both = EXERCISES.flatMap(({ id }) => sentencesOf(id)).filter(
      (text) => /\bround-out\b/.test(text) && /\b(?:throttle|idle)\b/.test(text),
    );
    expect(both.length).toBeGreaterThan(1);
    for (const text of both) expect(text).toMatch(/to idle in (?:the round-out|it)\b/);
    expect(sentencesOf('final-and-landing').join(' ')).toContain('closed when it is done');
  });
});

describe('an abandoned take-off', () => {
  /** Whether what is done first is said first, and how hard the brakes are. */
  const isInOrder = (text: string): boolean => {
    const places = REJECTED_TAKE_OFF.rows.map(([done]) =>
      text.search(done === 'power' ? /throttle closed/i : new RegExp(`\\b${done}`, 'i')),
    );
    return places.every((place, i) => place >= 0 && place > (places[i - 1] ?? -1)) && /\bhard\b/.test(text);
  };

  it('is throttle, straight, all the braking that holds, in exercise, brief and the mouth of the coach', () => {
    const [aim = ''] = sentencesOf('abandoned-take-off');
    expect(aim).toSatisfy(isInOrder);
    for (const brief of briefs()) expect(brief.engineFailure[0]).toSatisfy(isInOrder);
  });

  it.each(['reminded', 'talked-through'] as const)(
    'is said at once, once, and alone, to one who is %s',
    (level) => {
      const { said, told } = saidInExercise('abandoned-take-off', { level, seconds: 60 });
      const toldS = told.stop ?? Number.NaN;
      const after = said.filter(({ atS, s }) => atS >= toldS && !s.parked);
      expect(after.map(({ text }) => text)).toSatisfy(
        (texts: string[]) => texts.length === 1 && isInOrder(texts[0] ?? ''),
      );
      expect((after[0]?.atS ?? Number.NaN) - toldS).toBeLessThan(1.5);
    },
  );
});

describe('partial power', () => {
  const [[first]] = TRIED_FIRST.rows;

  it(`is speed, ${first} where there is a carburettor, fuel, pump, and leaving alone what works, in every brief`, () => {
    AEROPLANES.forEach(({ engine, equipment }, i) => {
      const sentence = briefs()[i]?.engineFailure.find((text) => text.startsWith('Part of the power')) ?? '';
      const wanted = [/\d+ kt first/, ...(engine.carburettor ? [new RegExp(first)] : []), /\bfuel\b/];
      const order = [...wanted, ...(equipment.pump ? [/\bpump\b/] : []), /leave alone what works/];
      const places = order.map((words) => sentence.search(words));
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(places).not.toContain(-1);
      expect(/heat/.test(sentence)).toBe(engine.carburettor);
    });
  });

  it.each(['reminded', 'talked-through'] as const)(
    'is said in the same order, and a plan after it, to one who is %s, and nobody is asked for power that is not there',
    (level) => {
      const { said } = saidInExercise('partial-power', { level, seconds: 150 });
      const after = said.filter(({ s }) => s.powerPartial);
      expect(after[0]?.text).toMatch(
        /^Part of the power is gone: 70 knots first; .*heat hot, fuel.*; then leave alone/,
      );
      expect(after.some(({ text }) => /^It climbs: a low, gentle circuit/.test(text))).toBe(true);
      const asked = after.filter(
        ({ text, s }) => s.throttle > 0.95 && /\ba little power|more power|full power/i.test(text),
      );
      expect(asked.map(({ text }) => text)).toEqual([]);
    },
  );
});

describe('radio failure', () => {
  const [[code]] = RADIO_FAILURE_CODE.rows;
  const exercise = sentencesOf('radio-failure').join(' ');

  it('has the code and every light with its meaning in the words of the exercise', () => {
    expect(exercise).toContain(code);
    for (const [, shown, meaning] of LIGHT_SIGNALS.rows) {
      const words = meaning === 'cleared to land' ? 'land' : meaning;
      expect(exercise.toLowerCase()).toMatch(new RegExp(`${shown}: ${words}`));
    }
  });

  it('is shown the lights of the table, green flashes before the steady green, and told the code once', () => {
    const { said, answers } = saidInExercise('radio-failure', {
      level: 'reminded',
      seconds: 300,
      procedures: { radio: 'towered' },
    });
    expect(answers).toEqual(['green-flashes', 'green-light']);
    expect(said.filter(({ text }) => text.includes(code))).toHaveLength(1);
    const { lesson } = flyWithProcedures({ start: 'downwind', seconds: 1, procedures: { radio: 'towered' } });
    for (const [light, , meaning] of LIGHT_SIGNALS.rows)
      if (light !== null) expect(answerSaid(light, lesson)).toContain(meaning);
  });
});
