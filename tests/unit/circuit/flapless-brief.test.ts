// A flap that stays up is neither set nor brought in: the brief of a flapless approach must not ask for it.
import { describe, expect, it } from 'vitest';
import { AEROPLANES, aerodromeNamed, exerciseNamed } from '../../../src/catalogue.ts';
import { briefOf } from '../../../src/circuit/brief/brief.ts';
import type { Brief } from '../../../src/circuit/brief/types.ts';
import { asExercised } from '../../../src/lesson/exercises/exercise-aeroplane.ts';
import { standardDay } from '../../../src/simulation/performance/standard-day.ts';

const aerodrome = aerodromeNamed('curlew-sands');
const weather = { ...standardDay(aerodrome.elevationFt), windFromDegM: 220, windKt: 5 };

const wordsOf = ({ approach, goAround, legs }: Brief) => ({
  landing: approach.landingFlap,
  configuration: goAround.find((each) => each.startsWith('Configuration')) ?? '',
  base: legs.find(({ leg }) => leg === 'base')?.words.checks.join('; ') ?? '',
});

describe.each(AEROPLANES.map((aeroplane) => [aeroplane.id, aeroplane] as const))(
  'the brief of %s',
  (_, own) => {
    const brief = (id: string) =>
      wordsOf(briefOf({ aeroplane: asExercised(exerciseNamed(id), own), aerodrome, weather, runway: '22' }));

    it('asks for no flap on base, on final or going around when it does not come out', () => {
      const { landing, configuration, base } = brief('flapless');
      expect(landing).toBe('Land with the flap up.');
      expect(base).toContain('power back first, the flap stays up, trim');
      expect(configuration).toContain('the flap is up already');
      // A wheel that goes up is still brought up
      expect(configuration.includes('gear up')).toBe(own.undercarriage.retractable);
    });

    it('asks for it when it does', () => {
      const { landing, configuration, base } = brief('normal-circuit');
      // The stages of its own plan, in degrees
      const deg = (stage: number) => own.flap.stages[stage]?.deg;
      expect(landing).toContain(`${deg(own.plan.landingStage)}°`);
      expect(base).toContain(`then flap ${deg(own.plan.baseStage)}°`);
      expect(configuration).toMatch(/^Configuration: from [1-9]\d*° flap to [1-9]\d*° first; climbing/);
    });
  },
);
