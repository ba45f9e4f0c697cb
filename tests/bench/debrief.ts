// What the debrief and the logbook cost: laying out ten minutes of flight, a thousand attempts, the root.

import { rowOf } from '../../src/formats/attempt.ts';
import { planOf, scenarioFrom } from '../../src/headless/scenario.ts';
import type { AttemptRow } from '../../src/lesson/attempts/attempt.ts';
import { practiseNext } from '../../src/lesson/attempts/practise.ts';
import { searchRows } from '../../src/lesson/attempts/search.ts';
import { itemTrends, legTrends } from '../../src/lesson/attempts/trends.ts';
import { DEFAULT_TOLERANCES } from '../../src/lesson/judge/tolerances.ts';
import { layOut } from '../../src/pages/debrief/replayed.ts';
import { createPilot } from '../../src/pilot/pilot.ts';
import { createSession, tick } from '../../src/session/session.ts';
import type { ControlSource } from '../../src/session/source.ts';
import { prepare } from '../../src/simulation/model.ts';
import { STEP_HZ } from '../../src/simulation/scenario.ts';
import { findRoot } from '../../src/study/root/root.ts';
import { keptBody } from '../support/attempt-files.ts';
import { headNamed } from '../support/attempts.ts';
import { flyFault, speedFrom } from '../support/faults.ts';
import { say } from './rows.ts';
import { cpuSeconds, median } from './timing.ts';

const scenario = { ...scenarioFrom({ wind: '050/10g20', turbulence: 'moderate' }, '.'), circuits: 2 };
const plan = planOf(scenario);
const model = prepare(scenario);
const session = createSession([
  { scenario, source: createPilot(model, plan) as ControlSource<unknown>, folds: [] },
]);
while (session.step < 600 * STEP_HZ) tick(session);
const recording = session.aircraft[0]?.recorder.recording;
if (recording === undefined) throw new Error('session: one aircraft was expected, found none');
const openings = Array.from(
  { length: 7 },
  () => cpuSeconds(() => layOut(recording, DEFAULT_TOLERANCES)) * 1000,
);
say({
  name: 'opening ten minutes of flight in the debrief',
  figure: median(openings),
  unit: 'ms',
  sense: 'at most',
  budget: 150,
});

const spoilt = flyFault({ leg: 'downwind', windDeg: 40, windKt: 10 }, speedFrom('final', 12)).flight;
const body = keptBody(spoilt);
const rows: AttemptRow[] = Array.from({ length: 1000 }, (_, i) =>
  rowOf(
    headNamed(`a-${i}`, { when: new Date(Date.UTC(2026, 0, 1) + i * 3_600_000).toISOString() }),
    body,
    20_000,
  ),
);
const sums = Array.from({ length: 5 }, () => {
  return (
    cpuSeconds(() => {
      searchRows(rows, 'curlew sound');
      itemTrends(rows);
      legTrends(rows);
      practiseNext(rows);
    }) * 1000
  );
});
say({
  name: 'search, trends and what to practise over 1,000 attempts',
  figure: median(sums),
  unit: 'ms',
  sense: 'at most',
  budget: null,
});

let flights = 0;
const rootS = cpuSeconds(() => {
  for (const progress of findRoot(spoilt, null)) flights = progress.flightsFlown;
});
say({ name: 'search for the root', figure: rootS, unit: 's', sense: 'at most', budget: null });
say({
  name: 'flights flown in that search',
  figure: flights,
  unit: 'flights',
  sense: 'at most',
  budget: null,
});
