// Budget (design/budgets.md and architecture.md): under 100 KB per ten minutes, deflated. Flown in the weather
// that moves the hands most.
import { deflateRawSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { recordingText } from '../../../src/formats/recording-json.ts';
import { planOf, scenarioFrom } from '../../../src/headless/scenario.ts';
import { createLesson } from '../../../src/lesson/lesson.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import { prepare } from '../../../src/simulation/model.ts';

it('keeps ten minutes in moderate turbulence under 100 KB', () => {
  const scenario = scenarioFrom({ wind: '050/10g20', turbulence: 'moderate', circuits: '2' }, '.');
  const plan = planOf(scenario);
  const model = prepare(scenario);
  const folds = [createLessonFold(createLesson(scenario.aeroplane, model.runway, plan))];
  const session = createSession([{ scenario, source: createPilot(model, plan), folds }]);
  while (session.step < 10 * 60 * 60) tick(session);
  const { recording } = session.aircraft[0]!.recorder;
  expect(recording.steps).toBe(36000);
  expect(deflateRawSync(recordingText(recording)).length).toBeLessThan(100_000);
});
