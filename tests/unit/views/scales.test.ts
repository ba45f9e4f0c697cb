import { describe, expect, it } from 'vitest';
import { runwayInUse } from '../../../src/aerodrome/runway.ts';
import { standardDay } from '../../../src/simulation/performance/standard-day.ts';
import { newSnapshot, type Snapshot } from '../../../src/simulation/snapshot.ts';
import {
  hpaFromInHg,
  mFromFt,
  mFromNmi,
  mpsFromFpm,
  mpsFromKt,
  paFromHpa,
  radFromDeg,
  revpsFromRpm,
} from '../../../src/units/conversions.ts';
import { arcStallKt } from '../../../src/views/scales/airspeed.ts';
import { SCALES } from '../../../src/views/scales/all.ts';
import { pressureWords } from '../../../src/views/scales/held-pressure.ts';
import type { Scale, ScaleSetting } from '../../../src/views/scales/scale.ts';
import { aerodromeNamed } from '../../support/aerodromes.ts';
import { aeroplaneNamed, variantOf } from '../../support/aeroplanes.ts';

const sandpiper = aeroplaneNamed('sandpiper');
const curlew = aerodromeNamed('curlew-sands');
const setting: ScaleSetting = {
  aeroplane: sandpiper,
  runway: runwayInUse(curlew, '22'),
  weather: { ...standardDay(curlew.elevationFt), qnhHpa: 1014 },
};
const scale = (id: string): Scale => SCALES.find((one) => one.id === id) as Scale;
const said = (id: string, changes: Partial<Snapshot>): string => {
  const one = scale(id);
  return one.text(one.value({ ...newSnapshot(), ...changes }, setting), setting);
};

/** Words and units after the panel an instructor reads out (common practice). */
describe('what the scales say', () => {
  const cases: readonly [string, Partial<Snapshot>, string][] = [
    ['airspeed', { shownIasMps: mpsFromKt(65.2), iasMps: 0 }, '65 kt'],
    ['altitude', { altitudeM: mFromFt(1017) }, '1,020 ft'],
    ['vertical-speed', { indicatedVerticalSpeedMps: mpsFromFpm(-334) }, '-330 ft/min'],
    ['vertical-speed', { indicatedVerticalSpeedMps: mpsFromFpm(672) }, '+670 ft/min'],
    ['vertical-speed', { indicatedVerticalSpeedMps: mpsFromFpm(-3) }, '0 ft/min'],
    ['rpm', { engineRevps: revpsFromRpm(1763) }, '1,760 rpm'],
    ['manifold', { manifoldPa: paFromHpa(hpaFromInHg(21.53)) }, '21.5 in'],
    ['gear', { gear: 1 }, 'down, locked'],
    ['gear', { gear: 0.4 }, 'moving'],
    ['gear', { gear: 0 }, 'up'],
    ['gear', { gear: 0, gearWarning: true }, 'not down: warning'],
    ['flap', { flapDeg: 20 }, '20°'],
    ['flap', { flapDeg: 0 }, 'up'],
    ['trim', { trim: 0.2 }, '2 up'],
    ['trim', { trim: -0.15 }, '1.5 down'],
    ['trim', { trim: 0 }, 'neutral'],
    ['held', { heldPressureDegKpa: 0 }, 'none'],
    ['held', { heldPressureDegKpa: 0.6 }, 'light pull'],
    ['held', { heldPressureDegKpa: -2 }, 'firm push'],
    ['held', { heldPressureDegKpa: -4.5 }, 'heavy push'],
    ['held', { heldPressureDegKpa: 7 }, 'pull, beyond one hand'],
    ['slip', { ball: 0 }, 'centred'],
    ['slip', { ball: 0.09 }, 'ball right'],
    ['slip', { ball: -0.04 }, 'ball slightly left'],
    ['load', { loadFactor: 1.15 }, '1.1 g'],
    ['pitch', { pitchRad: radFromDeg(-2.5) }, '2.5° down'],
    ['bank', { bankRad: radFromDeg(20) }, '20° right'],
    ['bank', { bankRad: radFromDeg(-0.3) }, 'level'],
  ];
  for (const [id, changes, words] of cases)
    it(`${id}: ${words}`, () => {
      expect(said(id, changes)).toBe(words);
    });

  it('heading and track are magnetic: 1 degree west of true at Curlew Sands reads 1 more', () => {
    // "Variation west, magnetic best": common practice.
    expect(said('heading', { headingRadT: radFromDeg(219) })).toBe('220°');
    expect(said('track', { trackRadT: radFromDeg(359) })).toBe('360°');
  });

  it('distance and offset are seen along the landing direction', () => {
    const { runway } = setting;
    const back = mFromNmi(1);
    const place = {
      eastM: -back * runway.sinHeading + 12 * runway.cosHeading,
      northM: -back * runway.cosHeading - 12 * runway.sinHeading,
    };
    expect(said('distance', place)).toBe('1.00 NM');
    expect(said('offset', place)).toBe('12 m right');
  });
});

describe('the arcs of the airspeed scale', () => {
  const arcs = scale('airspeed').arcs(setting);
  const arc = (word: string) => arcs.find((one) => one.means.startsWith(word));

  it('are those of FAA-H-8083-25: white Vs0 to Vfe, green Vs1 to Vno, yellow Vno to Vne, red line Vne', () => {
    // The design sheet in model.md: stall 50.6 clean, 44.0 with full flap; Vfe 85, Vno 105, Vne 140.
    expect(arc('white')?.from).toBeCloseTo(44.0, 0);
    expect(arc('white')?.to).toBe(85);
    expect(arc('green')?.from).toBeCloseTo(50.6, 0);
    expect(arc('green')?.to).toBe(105);
    expect(arc('yellow')).toMatchObject({ from: 105, to: 140 });
    expect(scale('airspeed').marks(setting)).toContainEqual(
      expect.objectContaining({ at: 140, colour: 'arcRed' }),
    );
  });

  it('stay where they are painted when the aeroplane is flown light: they are for maximum mass', () => {
    const light = variantOf(sandpiper, { massKg: { flown: 850 } });
    expect(arcStallKt(light, 0)).toBeCloseTo(arcStallKt(sandpiper, 0), 9);
  });
});

describe('every scale', () => {
  it('has a name, and an id of its own', () => {
    expect(new Set(SCALES.map((one) => one.id)).size).toBe(SCALES.length);
    for (const one of SCALES) expect(one.name).not.toBe('');
    // Those that the tests below look at
    expect(SCALES.filter((each) => each.ribbon).length).toBeGreaterThan(SCALES.length / 2);
  });

  for (const one of SCALES.filter((each) => each.ribbon))
    it(`${one.id}: arcs, ticks and marks lie on the ribbon`, () => {
      const [low, high] = [one.low(setting), one.high(setting)];
      expect(high).toBeGreaterThan(low);
      for (const { from, to } of one.arcs(setting)) {
        expect(from).toBeGreaterThanOrEqual(low);
        expect(to).toBeLessThanOrEqual(high);
        expect(to).toBeGreaterThan(from);
      }
      for (const { at } of [...one.ticks(setting), ...one.marks(setting)]) {
        expect(at).toBeGreaterThanOrEqual(low);
        expect(at).toBeLessThanOrEqual(high);
      }
    });

  it('keeps for the cockpit what a cockpit has', () => {
    const inCockpit = SCALES.filter((one) => one.inCockpit).map((one) => one.id);
    // Product: airspeed, altimeter, vertical speed, rpm, slip; window, lights and clock are no scales.
    const everywhere = ['airspeed', 'altitude', 'vertical-speed', 'rpm', 'manifold', 'slip', 'gear'];
    expect(inCockpit).toEqual(everywhere);
  });

  it('is there where the aeroplane has it', () => {
    const whimbrel = { ...setting, aeroplane: aeroplaneNamed('whimbrel') };
    for (const id of ['manifold', 'gear']) {
      expect(scale(id).aboard(setting)).toBe(false);
      expect(scale(id).aboard(whimbrel)).toBe(true);
    }
    expect(scale('airspeed').aboard(setting)).toBe(true);
  });

  it('calls the pressure by rising words as it rises', () => {
    expect([0.1, 0.3, 0.8].map(pressureWords)).toEqual(['light pull', 'firm pull', 'heavy pull']);
  });
});
