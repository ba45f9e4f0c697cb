// What flies many futures: the root of a spoilt circuit, the colours of its trail, a fan.

import { planOf, scenarioFrom } from '../../src/headless/scenario.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import { lessonOfScenario } from '../../src/lesson/lesson-of.ts';
import { createLessonFold } from '../../src/lesson/watch/lesson-fold.ts';
import { createPilot, type Ways } from '../../src/pilot/pilot.ts';
import { createSession, tick } from '../../src/session/session.ts';
import type { ControlSource, Fold } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import { STEP_HZ } from '../../src/simulation/scenario.ts';
import { flyFan } from '../../src/study/fan.ts';
import { instantAt, type StudyFlight, seeAgain } from '../../src/study/flown.ts';
import { approachToStudy, findRoot } from '../../src/study/root/root.ts';
import { colourTrail } from '../../src/study/trail.ts';
import { say } from './rows.ts';
import { cpuSeconds, median } from './timing.ts';

const scenario = scenarioFrom({ wind: '050/10g20', turbulence: 'light' }, '.');
const plan = planOf(scenario);
const model = prepare(scenario);

/** A pilot who believes the needle to read 8 m/s too much from base on. */
const misread: Ways = {
  beforeLook: (_, m, v) => {
    if (m.phase === 'base' || m.phase === 'final') v.iasMps -= 8;
  },
  afterLook: () => {},
};
const source = createPilot(model, plan, misread) as ControlSource<unknown>;
const folds = [createLessonFold(lessonOfScenario(scenario, model.runway, plan, null)) as Fold<unknown>];
const session = createSession([{ scenario, source, folds }]);
while (session.step < 330 * STEP_HZ && session.aircraft[0]?.snapshot.ended === null) tick(session);
const recording = session.aircraft[0]?.recorder.recording;
if (recording === undefined) throw new Error('session: one aircraft was expected, found none');
const flight: StudyFlight = { recording, plan, exercise: null, limits: DEFAULT_TOLERANCES };

let flightsFlown = 0;
const root = (): void => {
  const search = findRoot(flight);
  for (let found = search.next(); ; found = search.next()) {
    flightsFlown = found.value.flightsFlown;
    if (found.done === true) return;
  }
};
const times = (work: () => void): number => {
  for (let i = 0; i < 3; i += 1) work();
  return median([0, 1, 2, 3, 4].map(() => cpuSeconds(work)));
};
say({ name: 'root of a spoilt circuit', figure: times(root), unit: 's CPU', sense: 'at most', budget: null });
say({ name: 'flights flown for it', figure: flightsFlown, unit: '', sense: 'at most', budget: null });

const flown = seeAgain(flight);
const approach = approachToStudy(flown);
const colour = (): void => {
  if (approach === null) throw new Error('study: an approach was expected, found none');
  const colouring = colourTrail(flown, approach);
  while (colouring.next().done !== true);
};
say({ name: 'colours of its trail', figure: times(colour), unit: 's CPU', sense: 'at most', budget: null });

const { state, controls } = instantAt(flown, 120);
say({
  name: 'fan of 9 futures of 60 s',
  figure: 1000 * times(() => flyFan({ model, state, controls })),
  unit: 'ms CPU',
  sense: 'at most',
  budget: 60,
});
