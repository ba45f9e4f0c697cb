// A recorded flight, seen again, gives what the flight itself gave: the command line's track of the same flight is
// the reference (headless.md). GPX and KML are read back by @tmcw/togeojson on @xmldom/xmldom.
import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { planCircuit } from '../../../src/circuit/plan.ts';
import { recordedCsv, recordedGpx, recordedKml } from '../../../src/formats/flown-again.ts';
import { flyOrder } from '../../../src/headless/flight.ts';
import { createPilot } from '../../../src/pilot/pilot.ts';
import { tick } from '../../../src/session/session.ts';
import type { ControlSource } from '../../../src/session/source.ts';
import { prepare } from '../../../src/simulation/model.ts';
import { beginAttempt, gustyScenario } from '../../support/attempts.ts';

const SECONDS = 75;
const scenario = gustyScenario(5);
const model = prepare(scenario);
const plan = planCircuit(model.shape, scenario.aeroplane, scenario.aerodrome, model.runway, scenario.weather);
const source = createPilot(model, plan) as ControlSource<unknown>;
const flight = beginAttempt(scenario, source);
for (let i = 0; i < SECONDS * 60; i += 1) tick(flight.session);
const { recording, result } = flight.body();
const readAs = (text: string) => new DOMParser().parseFromString(text, 'text/xml') as unknown as Document;

describe('a recorded flight, seen again', () => {
  it('gives the track of the flight itself, row for row', () => {
    const flown = flyOrder({
      scenario,
      plan,
      model,
      source: createPilot(model, plan) as ControlSource<unknown>,
      durationS: SECONDS,
      openLoop: true,
      trackHz: 10,
      gpx: true,
    });
    const rows = recordedCsv(recording).split('\r\n');
    expect(rows).toHaveLength(1 + SECONDS * 10 + 1 + 1);
    expect(rows).toEqual(flown.track.split('\r\n'));
    expect(recordedGpx(recording)).toBe(flown.gpx);
  });

  it('gives a point a second as GPX and as KML', () => {
    const [track] = gpx(readAs(recordedGpx(recording))).features;
    const [path] = kml(readAs(recordedKml(recording, result))).features;
    const coordinates = (feature: typeof track) =>
      feature?.geometry?.type === 'LineString' ? feature.geometry.coordinates : [];
    expect(coordinates(track)).toHaveLength(SECONDS + 1);
    expect(coordinates(path)).toEqual(coordinates(track));
  });
});
