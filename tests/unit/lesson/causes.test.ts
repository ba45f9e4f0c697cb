// What lies behind a landing, an engine failure, an abandoned take-off: by rule, from facts written by hand.
import { describe, expect, it } from 'vitest';
import { causesOf } from '../../../src/lesson/judge/causes.ts';
import type { Band, ItemReport } from '../../../src/lesson/judge/report.ts';
import type { LandingFact, LessonMemory } from '../../../src/lesson/memory.ts';
import type { CircuitFacts } from '../../../src/lesson/watch/facts.ts';
import { mFromFt, mpsFromKt, radFromDeg } from '../../../src/units/conversions.ts';

/** A round-out begun in time, level at three feet, held off and put down. */
const GOOD: LandingFact = {
  circuit: 1,
  fromS: 60,
  overMps: 0,
  sinkMps: 2,
  pitchRad: 0,
  headwindMps: 3,
  pulledRadps: radFromDeg(2),
  levelM: mFromFt(3),
  levelIasMps: 30,
  lowestM: 0,
  balloonM: 0,
  balloonGustMps: 0,
  highestPitchRad: radFromDeg(6),
  pushedRad: 0,
  pushedFromM: 0,
  fromM: mFromFt(2),
  poweredS: 1,
  crabRad: 0,
  touched: true,
  hopM: 0,
  lockedS: 0,
  over: true,
};

const item = (id: string, band: Band, value = 500): ItemReport => ({
  id,
  circuit: 1,
  leg: 'landing-roll',
  value,
  unit: '',
  target: 100,
  low: 0,
  high: 240,
  band,
  source: '',
});

const facts = (m: Partial<LessonMemory>): CircuitFacts =>
  ({
    circuit: 1,
    stretches: [],
    turns: [],
    touchdown: { atS: 80, sinkMps: 2.5, crabRad: radFromDeg(8), alongM: 100 },
    m: {
      engine: null,
      said: [],
      gates: [],
      safety: [],
      dues: [],
      landings: [],
      ranOffAt: null,
      landedOut: false,
      ...m,
    },
    lesson: {
      aeroplane: { speeds: { glideKt: 68 } },
      task: { technique: 'normal', instructions: [] },
      plan: { approachIasMps: 33 },
    },
  }) as unknown as CircuitFacts;

const HARD = [item('touchdown-sink', 'red')];
const FAR = [item('touchdown-point', 'red')];
const found = (landing: Partial<LandingFact>, rows: readonly ItemReport[]): string[] =>
  causesOf(facts({ landings: [{ ...GOOD, ...landing }] }), rows).map(({ id }) => id);

describe('the cause of a landing', () => {
  it('is not looked for where nothing was outside', () => {
    expect(found({ levelM: mFromFt(20), balloonM: 3 }, [item('touchdown-sink', 'green', 100)])).toEqual([]);
  });

  it.each<[string, Partial<LandingFact>, readonly ItemReport[]]>([
    ['levelled-high', { levelM: mFromFt(20), fromM: mFromFt(14) }, HARD],
    ['rounded-out-quickly', { pulledRadps: radFromDeg(6), levelM: mFromFt(14), fromM: mFromFt(14) }, HARD],
    ['balloon-pulled', { balloonM: mFromFt(6), levelM: mFromFt(4) }, HARD],
    ['balloon-fast', { balloonM: mFromFt(6), levelM: mFromFt(4), overMps: mpsFromKt(9) }, HARD],
    ['balloon-gust', { balloonM: mFromFt(6), levelM: mFromFt(4), balloonGustMps: mpsFromKt(8) }, HARD],
    ['rounded-out-late', { levelM: null, fromM: null, highestPitchRad: radFromDeg(3) }, HARD],
    ['landed-flat', { levelM: null, fromM: null, highestPitchRad: 0 }, HARD],
    ['power-kept', { poweredS: 9 }, FAR],
    ['carried-speed', { overMps: mpsFromKt(12) }, FAR],
    ['dropped', { fromM: mFromFt(7), levelM: mFromFt(8) }, HARD],
    ['pushed', { pushedRad: radFromDeg(6), pushedFromM: mFromFt(5), levelM: mFromFt(5) }, HARD],
  ])('is %s alone', (id, landing, rows) => {
    expect(found(landing, rows)).toEqual([id]);
  });

  it('is the crab left on, and the brakes locked', () => {
    const rows = [item('touchdown-crab', 'red')];
    expect(found({ crabRad: radFromDeg(8) }, rows)).toEqual(['not-straightened']);
    expect(found({ crabRad: radFromDeg(1) }, rows)).toEqual([]);
    expect(found({ lockedS: 2 }, [])).toEqual(['brakes-locked']);
  });

  it('is nothing the memory of an earlier version could tell', () => {
    const { landings: _, ...earlier } = facts({}).m;
    expect(causesOf({ ...facts({}), m: earlier as LessonMemory }, HARD)).toEqual([]);
  });
});

describe('the cause of an engine failure or an abandoned take-off that went wrong', () => {
  const engine = (turnedDeg: number, slowestKt: number): LessonMemory['engine'] => ({
    failedS: 40,
    headingRadT: 0,
    turnedRad: radFromDeg(turnedDeg),
    iasMps: { count: 1, sum: 30, min: 30, max: 30 },
    firstIasMps: { count: 1, sum: 30, min: mpsFromKt(slowestKt), max: 35 },
  });
  const failed = (turnedDeg: number, slowestKt: number, rows: readonly ItemReport[]): string[] =>
    causesOf(facts({ engine: engine(turnedDeg, slowestKt) }), rows).map(({ id }) => id);

  it('is turning back, and the nose put down late', () => {
    expect(failed(170, 66, [item('engine-failure-turn', 'red')])).toEqual(['turned-back']);
    expect(failed(20, 66, [item('engine-failure-turn', 'green')])).toEqual([]);
    expect(failed(20, 52, [item('engine-failure-speed', 'red', -1)])).toEqual(['nose-late']);
    expect(failed(20, 66, [item('engine-failure-speed', 'red', -1)])).toEqual([]);
  });

  it('is braking before the throttle was closed', () => {
    const said = {
      what: 'stop',
      circuit: 1,
      saidS: 9,
      obeyedS: 12,
      thenS: null,
      turnedRad: 0,
      lastTrackRad: 0,
    } as const;
    const stopped = (brakedFirst: boolean) =>
      causesOf(facts({ said: [{ ...said, brakedFirst }] }), [item('stop-answer', 'green', 1)]).map(
        ({ id }) => id,
      );
    expect(stopped(true)).toEqual(['braked-first']);
    expect(stopped(false)).toEqual([]);
  });
});
