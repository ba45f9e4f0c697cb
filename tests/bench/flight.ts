// Whole flights without a screen: model pilot, moderate turbulence, recorder, lesson and result.
import { serialize } from 'node:v8';
import { deflateRawSync } from 'node:zlib';
import { exerciseOf } from '../../src/exercises.ts';
import { recordingText } from '../../src/formats/recording-json.ts';
import { flyOrder } from '../../src/headless/flight.ts';
import { planOf, scenarioFrom } from '../../src/headless/scenario.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { type Aircraft, createSession, type Session, tick } from '../../src/session/session.ts';
import { prepare } from '../../src/simulation/model.ts';
import { STEP_HZ } from '../../src/simulation/scenario.ts';
import { createTrail, extendTrail, type Trail } from '../../src/views/trail.ts';
import { say } from './rows.ts';
import { bytesMade, cpuSeconds, cpuSideBySide, median } from './timing.ts';

const weather = { wind: '050/10g20', turbulence: 'moderate' } as const;
const MINUTE = 60 * STEP_HZ;

const TO_A_STOP = { durationS: null, openLoop: false, trackHz: null, gpx: false } as const;

// Ten seeds of one circuit each, to a stop; planned once, as the command does it
const scenario = scenarioFrom({ ...weather }, '.');
const plan = planOf(scenario);
let flownS = 0;
const circuits = (): void => {
  flownS = 0;
  for (let seed = 1; seed <= 10; seed += 1) {
    const seeded = { ...scenario, seed };
    const model = prepare(seeded);
    const source = createPilot(model, plan);
    const order = { scenario: seeded, plan, model, source, ...TO_A_STOP };
    flownS += flyOrder(order).result.flight_s;
  }
};
const [circuitsCpuS = 1] = cpuSideBySide([circuits], 7, 2);
say({
  name: 'headless circuit: pilot, turbulence, recording, result',
  figure: flownS / circuitsCpuS,
  unit: '× real time',
  sense: 'at least',
  budget: 15_000,
});

/** A session of touch-and-goes that has flown so many minutes, and the trail it left. */
const sessionOf = (minutes: number): { readonly session: Session; readonly trail: Trail } => {
  const scenario = scenarioFrom({ ...weather, circuits: '50' }, '.');
  const plan = planOf(scenario);
  const model = prepare(scenario);
  const folds = [createLessonFold(lessonOfScenario(scenario, model.runway, plan, exerciseOf(scenario)))];
  const session = createSession([{ scenario, source: createPilot(model, plan), folds }]);
  const trail = createTrail();
  for (let i = 0; i < minutes * MINUTE; i += 1) {
    tick(session);
    extendTrail(trail, (session.aircraft[0] as Aircraft).snapshot);
  }
  return { session, trail };
};

const tenMinutes = sessionOf(10).session;
say({
  name: 'garbage of a step of the whole session',
  figure:
    bytesMade(() => {
      for (let i = 0; i < 2 * MINUTE; i += 1) tick(tenMinutes);
    }) /
    (2 * MINUTE),
  unit: 'B',
  sense: 'at most',
  budget: null,
});

const { recording } = (sessionOf(10).session.aircraft[0] as Aircraft).recorder;
say({
  name: 'recording of ten minutes, deflated',
  figure: deflateRawSync(recordingText(recording)).length / 1000,
  unit: 'KB',
  sense: 'at most',
  budget: 100,
});

/** What twice the flight costs, over what it would cost if it were twice as much. */
const timeGrowth = (minutes: number): number =>
  median(
    [0, 1, 2].map(() => {
      const once = cpuSeconds(() => sessionOf(minutes));
      const twice = cpuSeconds(() => sessionOf(2 * minutes));
      return twice / (2 * once);
    }),
  );
/** Everything that a flight carries along, weighed as the engine writes it down. */
const carriedBytes = (minutes: number): number => {
  const { session, trail } = sessionOf(minutes);
  const { state, sourceMemory, foldMemories, recorder } = session.aircraft[0] as Aircraft;
  return serialize({ state, sourceMemory, foldMemories, recording: recorder.recording, trail }).byteLength;
};
say({
  name: 'time for 60 minutes, trail and all, over twice that for 30',
  figure: timeGrowth(30),
  unit: '',
  sense: 'at most',
  budget: 1.1,
});
say({
  name: 'what 60 minutes carry along over twice that of 30',
  figure: carriedBytes(60) / (2 * carriedBytes(30)),
  unit: '',
  sense: 'at most',
  budget: 1.1,
});
