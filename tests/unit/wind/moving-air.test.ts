import { describe, expect, it } from 'vitest';
import { nextUniform, seedStream } from '../../../src/maths/random.ts';
import { mpsFromKt } from '../../../src/units/conversions.ts';
import { beginGusts, GUST_SLOTS, gustMps, gustShare, stepGusts } from '../../../src/wind/gusts.ts';
import { AIR_SLOTS, airVelocity, beginAir, stepAir } from '../../../src/wind/moving-air.ts';
import { meanWind } from '../../../src/wind/profile.ts';
import { CALM, TURBULENCE_LEVELS, type Wind } from '../../../src/wind/wind.ts';

const dtS = 1 / 60;
const SPAN_M = 11;
const gusty: Wind = {
  ...CALM,
  fromRadT: 3.6,
  speedMps: mpsFromKt(20),
  gustMps: mpsFromKt(30),
  turbulence: 'moderate',
};

const fresh = (at: number, name: string): Float64Array => {
  const memory = new Float64Array(at + AIR_SLOTS.length + 2);
  beginAir(memory, at, seedStream(name));
  return memory;
};

describe('gusts', () => {
  const stream = GUST_SLOTS.length;
  const memory = new Float64Array(stream + 4);
  memory.set(seedStream('gusts'), stream);
  beginGusts(memory, 0);

  // 20 hours hold 3,600 gusts; the lulls between them are exponential with mean 13 s: one standard error of
  // the mean spacing is .22 s.
  it('come every 20 s on average, last 4 to 10 s, and reach the reported gust', () => {
    let onsets = 0;
    let peak = 0;
    let total = 0;
    const steps = 20 * 3600 * 60;
    for (let i = 0; i < steps; i++) {
      const before = memory[1]!;
      stepGusts(memory, 0, stream, dtS);
      if (before === 0 && memory[1]! > 0) onsets++;
      const share = gustShare(memory, 0);
      peak = Math.max(peak, share);
      total += share;
      if (memory[1]! !== 0 && !(memory[1]! >= 4 && memory[1]! <= 10)) expect.fail(`lasts ${memory[1]}`);
    }
    expect(Math.abs((steps * dtS) / onsets - 20)).toBeLessThan(0.8);
    expect(peak).toBeGreaterThan(0.999);
    expect(Math.abs(total / steps - 0.175)).toBeLessThan(0.008);
  });

  it('never blow below the mean nor above the reported gust, and not at all where none is reported', () => {
    for (let sinceS = 0; sinceS <= 6; sinceS += 0.01) {
      const now = Float64Array.of(sinceS, 6);
      const extra = gustMps(gusty, now, 0);
      expect(extra).toBeGreaterThanOrEqual(0);
      expect(extra).toBeLessThanOrEqual(mpsFromKt(10) + 1e-12);
      expect(gustMps({ ...gusty, gustMps: null }, now, 0)).toBe(0);
    }
  });
});

describe('moving air', () => {
  it('draws eight numbers a step whatever the wind, so that nobody else is shifted', () => {
    const at = 3;
    for (const turbulence of TURBULENCE_LEVELS) {
      for (const gust of [null, 15]) {
        const memory = fresh(at, 'draws');
        const counted = memory.slice(at, at + 4);
        const wind = { ...gusty, turbulence, gustMps: gust };
        for (let i = 0; i < 2000; i++) {
          stepAir(memory, at, wind, dtS, 100 - i * 0.1, 33, SPAN_M);
          for (let draw = 0; draw < 8; draw++) nextUniform(counted, 0);
        }
        expect([...memory.subarray(at, at + 4)]).toEqual([...counted]);
      }
    }
  });

  it('keeps every number inside its declared range and touches no other, even in absurd flight', () => {
    const at = 1;
    const memory = fresh(at, 'ranges');
    memory[0] = 77;
    memory[at + AIR_SLOTS.length] = 88;
    for (let i = 0; i < 100_000; i++) {
      const heightM = i % 7 === 0 ? -50 : (i * 37) % 20000;
      stepAir(memory, at, gusty, dtS, heightM, (i * 13) % 400, i % 3 === 0 ? 0 : SPAN_M);
      AIR_SLOTS.forEach(({ name, low, high }, slot) => {
        const x = memory[at + slot]!;
        if (!(x >= low && x <= high)) expect.fail(`${name} was ${x}, expected ${low} to ${high}`);
      });
    }
    expect(memory[0]).toBe(77);
    expect(memory[at + AIR_SLOTS.length]).toBe(88);
  });

  it('goes on from a copy exactly as the original does', () => {
    const memory = fresh(0, 'fork');
    for (let i = 0; i < 500; i++) stepAir(memory, 0, gusty, dtS, 150, 35, SPAN_M);
    const fork = memory.slice();
    for (let i = 0; i < 500; i++) {
      stepAir(memory, 0, gusty, dtS, 150, 35, SPAN_M);
      stepAir(fork, 0, gusty, dtS, 150, 35, SPAN_M);
    }
    expect([...fork]).toEqual([...memory]);
  });

  it('is the mean wind where there is neither gust nor turbulence', () => {
    const memory = fresh(0, 'plain');
    const plain: Wind = { ...gusty, gustMps: null, turbulence: 'none' };
    const out = new Float64Array(3);
    const mean = new Float64Array(2);
    for (let i = 0; i < 100; i++) stepAir(memory, 0, plain, dtS, 150, 35, SPAN_M);
    airVelocity(memory, 0, plain, 80, 0.6, 0.8, out);
    meanWind(plain, 80, mean);
    expect([...out]).toEqual([mean[0], mean[1], 0]);
  });

  it('lays turbulence along the airspeed, to its right, and up', () => {
    const memory = fresh(0, 'axes');
    const still: Wind = { ...CALM, turbulence: 'light' };
    const named = (name: string): number => memory[AIR_SLOTS.findIndex((slot) => slot.name === name)]!;
    const out = new Float64Array(3);
    for (let i = 0; i < 10; i++) stepAir(memory, 0, still, dtS, 150, 35, SPAN_M);
    const along = named('air.turbulenceAlongMps');
    const right = named('air.turbulenceRightMps');
    airVelocity(memory, 0, still, 150, 0, 1, out);
    expect(out[0]).toBeCloseTo(right, 12);
    expect(out[1]).toBeCloseTo(along, 12);
    expect(out[2]).toBe(named('air.turbulenceUpMps'));
    airVelocity(memory, 0, still, 150, 1, 0, out);
    expect(out[0]).toBeCloseTo(along, 12);
    expect(out[1]).toBeCloseTo(-right, 12);
  });

  it('starts as if it had always blown: the first steps are as strong as the rest', () => {
    let squares = 0;
    const starts = 2000;
    const up = AIR_SLOTS.findIndex((slot) => slot.name === 'air.turbulenceUpMps');
    for (let i = 0; i < starts; i++) {
      const memory = fresh(0, `start ${i}`);
      stepAir(memory, 0, gusty, dtS, 150, 35, 0);
      squares += memory[up]! * memory[up]!;
    }
    // sigma_w of moderate at a point, .1 of 30 kt (MIL-F-8785C); 2,000 starts: standard error of sigma 1.6 %.
    expect(Math.abs(Math.sqrt(squares / starts) / mpsFromKt(3) - 1)).toBeLessThan(0.06);
  });
});
