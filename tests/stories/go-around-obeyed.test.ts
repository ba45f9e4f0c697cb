// Somebody who is told to go around and does it is not talked back onto the approach.
import { expect, it } from 'vitest';
import { flyOrder } from '../../src/headless/flight.ts';
import { prepare } from '../../src/simulation/model.ts';
import type { ControlSource } from '../../src/simulation/source.ts';
import { ftFromM, radFromDeg } from '../../src/units/conversions.ts';
import { scenarioFrom } from '../support/flights.ts';
import { bankHold, pitchHold } from '../support/holds.ts';

/** Idle from the start of final, so that nothing is stabilised; from `obeysFt` on full power and the nose at 6 degrees. */
const obedient = (obeysFt: number): ControlSource<Record<string, never>> => {
  let around = false;
  const pitch = pitchHold(() => radFromDeg(around ? 6 : -2));
  const level = bankHold(0);
  return {
    name: 'obedient',
    begin: () => ({}),
    next: (s, _, controls) => {
      around ||= ftFromM(s.heightM) < obeysFt;
      controls.throttle = around ? 1 : 0.1;
      pitch(s, controls);
      level(s, controls);
    },
  };
};

const said = (obeysFt: number, coach: 'talked-through' | 'reminded') => {
  const { scenario, plan } = scenarioFrom('final');
  const { result } = flyOrder({
    scenario,
    plan,
    model: prepare(scenario),
    source: obedient(obeysFt) as ControlSource<unknown>,
    durationS: 75,
    openLoop: true,
    trackHz: null,
    gpx: false,
    coach,
  });
  return result.said ?? [];
};

it.each([
  [190, 'talked-through'],
  [190, 'reminded'],
  [150, 'talked-through'],
] as const)('obeyed from %d ft, %s', (obeysFt, coach) => {
  const words = said(obeysFt, coach);
  const asked = words.findIndex(({ text }) =>
    /^(?:Go around|Sinking fast).*go around|^Go around/i.test(text),
  );
  expect(asked).toBeGreaterThanOrEqual(0);
  const after = words.slice(asked + 1).map(({ text }) => text);
  expect(after.length).toBeGreaterThan(0);
  // Neither the approach nor its calls, checks and trim
  for (const text of after)
    expect(text).not.toMatch(/aim point|less power|trim nose|call "?final|landing flap|lights/i);
});
