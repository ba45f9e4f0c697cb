// Dryden turbulence of MIL-F-8785C. Lw, sigma_w, levels and the spectra of u and w
// VERIFIED; Lu, the sigma ratio and the discrete filters' form from memory, held by their continuity at 1,000 ft.
// Near the ground and over a span: `near-ground-turbulence.test.ts`.
import FFT from 'fft.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { beginStream, STREAM_SLOTS, seedStream } from '../../src/maths/random.ts';
import { ftFromM, mFromFt, mpsFromKt } from '../../src/units/conversions.ts';
import { gustShare } from '../../src/wind/gusts.ts';
import {
  ALONG,
  beginTurbulence,
  RIGHT,
  stepTurbulence,
  TURBULENCE_SLOTS,
  UP,
} from '../../src/wind/turbulence.ts';
import { trust } from '../support/trust-table.ts';
import {
  horizontalLengthM,
  LEVEL_W20_KT,
  strengthAt,
  verticalLengthM,
  windAt20Ft,
} from '../support/turbulence.ts';

// The wind that belongs to the level blows, and the gust is a point's: MIL-F-8785C as it stands.
const POINT = 0;
const light = windAt20Ft('light', LEVEL_W20_KT.light);
const moderate = windAt20Ft('moderate', LEVEL_W20_KT.moderate);
const verticalSigmaMps = (level: 'light' | 'moderate'): number =>
  strengthAt(level === 'light' ? light : moderate, mFromFt(300)).vertical;
const horizontalSigmaMps = (level: 'light' | 'moderate', heightM: number): number =>
  strengthAt(level === 'light' ? light : moderate, heightM).horizontal;

describe('lengths and strengths', () => {
  // RECOMPUTED from those forms: h ft, Lu ft, sigma_u / sigma_w.
  it.each([
    [20, 143.59, 1.9291],
    [50, 310.79, 1.8386],
    [100, 505.17, 1.7158],
    [200, 725.79, 1.5367],
    [300, 840.24, 1.4096],
    [500, 944.66, 1.2362],
    [1000, 1000, 1],
  ])('at %d ft', (heightFt, lengthFt, ratio) => {
    const heightM = mFromFt(heightFt);
    expect(Math.abs(ftFromM(horizontalLengthM(heightM)) - lengthFt)).toBeLessThan(0.006);
    expect(Math.abs(ftFromM(verticalLengthM(heightM)) - heightFt)).toBeLessThan(1e-9);
    expect(Math.abs(horizontalSigmaMps('light', heightM) / verticalSigmaMps('light') - ratio)).toBeLessThan(
      0.00006,
    );
  });

  // sigma_w = .1 W20, W20 15 and 30 kt VERIFIED; .772 and 1.543 m/s RECOMPUTED.
  it('light and moderate have a tenth of 15 and 30 kt', () => {
    expect(Math.abs(verticalSigmaMps('light') - 0.772)).toBeLessThan(0.0006);
    expect(Math.abs(verticalSigmaMps('moderate') - 1.543)).toBeLessThan(0.0006);
  });

  // The same at every height from the source's 10 ft up, in the wind that belongs to the level.
  it.each([10, 20, 50, 100, 300, 1000, 5000])('the vertical gust has it at %d ft', (heightFt) => {
    for (const [wind, sigmaMps] of [
      [light, 0.1 * mpsFromKt(15)],
      [moderate, 0.1 * mpsFromKt(30)],
    ] as const) {
      expect(strengthAt(wind, mFromFt(heightFt)).vertical).toBeCloseTo(sigmaMps, 12);
    }
  });

  // What the level sets aloft does not ask for the wind: up from 300 ft, all from 1,000 ft.
  it.each(['light', 'moderate'] as const)('%s is as strong aloft in calm and in a gale', (level) => {
    const sigmaMps = 0.1 * mpsFromKt(LEVEL_W20_KT[level]);
    for (const kt of [0, 5, 12, 25, 60]) {
      const wind = windAt20Ft(level, kt);
      for (const heightFt of [300, 500, 1000, 3000])
        expect(strengthAt(wind, mFromFt(heightFt)).vertical).toBeCloseTo(sigmaMps, 12);
      for (const heightFt of [1000, 3000])
        expect(strengthAt(wind, mFromFt(heightFt)).horizontal).toBeCloseTo(sigmaMps, 12);
    }
  });

  // RECOMPUTED: continuous and isotropic at 1,000 ft; 1,750 ft from 2,000 ft up, VERIFIED.
  it('are one length at 1,000 ft, and 1,750 ft from 2,000 ft up', () => {
    for (const heightFt of [999.999, 1000.001]) {
      expect(Math.abs(ftFromM(horizontalLengthM(mFromFt(heightFt))) - 1000)).toBeLessThan(0.01);
      expect(Math.abs(ftFromM(verticalLengthM(mFromFt(heightFt))) - 1000)).toBeLessThan(0.01);
    }
    for (const heightFt of [2000, 5000]) {
      expect(ftFromM(horizontalLengthM(mFromFt(heightFt)))).toBeCloseTo(1750, 6);
      expect(ftFromM(verticalLengthM(mFromFt(heightFt)))).toBeCloseTo(1750, 6);
    }
  });
});

// Ten hours of light turbulence at 65 kt and 300 ft, sampled at 60 Hz and kept as sums.
const heightM = mFromFt(300);
const tasMps = mpsFromKt(65);
const dtS = 1 / 60;
const HOURS = 10;
const SAMPLES = HOURS * 3600 * 60;
const axes = ['along', 'right', 'up'] as const;
type Axis = (typeof axes)[number];
const offset: Record<Axis, number> = { along: ALONG, right: RIGHT, up: UP };
const lengthM: Record<Axis, number> = {
  along: horizontalLengthM(heightM),
  right: horizontalLengthM(heightM),
  up: verticalLengthM(heightM),
};
const sigmaMps: Record<Axis, number> = {
  along: horizontalSigmaMps('light', heightM),
  right: horizontalSigmaMps('light', heightM),
  up: verticalSigmaMps('light'),
};
const run: Record<Axis, Float64Array> = {
  along: new Float64Array(SAMPLES),
  right: new Float64Array(SAMPLES),
  up: new Float64Array(SAMPLES),
};

beforeAll(() => {
  const at = STREAM_SLOTS.length;
  const memory = new Float64Array(at + TURBULENCE_SLOTS.length);
  beginStream(memory, 0, seedStream('truth/turbulence'));
  beginTurbulence(memory, at, 0);
  for (let i = 0; i < SAMPLES; i++) {
    stepTurbulence(memory, at, 0, dtS, light, heightM, tasMps, POINT);
    for (const axis of axes) run[axis][i] = memory[at + offset[axis]]!;
  }
});

const meanProduct = (x: Float64Array, lag: number): number => {
  let sum = 0;
  for (let i = lag; i < x.length; i++) sum += x[i]! * x[i - lag]!;
  return sum / (x.length - lag);
};

describe('ten hours of it', () => {
  // Ten hours hold about 2,300 independent samples of u (correlation time 7.66 s, both sides): one standard
  // error of sigma is 1.5 %. Bands are three of them; w is quicker.
  it('have the stated standard deviations and no mean', () => {
    for (const axis of axes) {
      const mean = run[axis].reduce((sum, x) => sum + x, 0) / SAMPLES;
      const sigma = Math.sqrt(meanProduct(run[axis], 0));
      expect(Math.abs(mean / sigmaMps[axis]), axis).toBeLessThan(0.07);
      trust('strength of turbulence, ten hours', 'MIL-F-8785C', sigma, sigmaMps[axis], '%');
      expect(Math.abs(sigma / sigmaMps[axis] - 1), axis).toBeLessThan(0.045);
    }
  });

  // rho(u) = e^-s; rho(v, w) = (1 - s/2) e^-s of MIL-F-8785C, RECOMPUTED: s = .5, 1, 2, 3. This and the
  // spectrum catch the wrong pairing of the lengths with the other standard's spectra.
  const expected: Record<Axis, readonly number[]> = {
    along: [0.6065, 0.3679, 0.1353, 0.0498],
    right: [0.4549, 0.1839, 0, -0.0249],
    up: [0.4549, 0.1839, 0, -0.0249],
  };
  it.each(axes)('have the stated autocorrelation %s', (axis) => {
    const variance = meanProduct(run[axis], 0);
    [0.5, 1, 2, 3].forEach((s, i) => {
      const lag = Math.round((s * lengthM[axis]) / (tasMps * dtS));
      const found = meanProduct(run[axis], lag) / variance;
      trust('autocorrelation of turbulence, ten hours', 'MIL-F-8785C', found, expected[axis][i]!, '');
      expect(Math.abs(found - expected[axis][i]!), `lag ${s} lengths`).toBeLessThan(0.05);
    });
  });

  // Same seed, other axis: u, v and w are independent of each other at lag 0.
  it('have axes that know nothing of each other', () => {
    for (const [a, b] of [
      ['along', 'right'],
      ['along', 'up'],
      ['right', 'up'],
    ] as const) {
      let sum = 0;
      for (let i = 0; i < SAMPLES; i++) sum += run[a][i]! * run[b][i]!;
      expect(Math.abs(sum / SAMPLES / (sigmaMps[a] * sigmaMps[b]))).toBeLessThan(0.06);
    }
  });

  // One-sided spectra over spatial frequency, integral sigma^2. Periodograms of blocks, averaged with a Hann
  // window (Welch 1967), summed over third-octave bands and compared with the formula there.
  const formula: Record<Axis, (omega: number) => number> = {
    along: (omega) => {
      const x = lengthM.along * omega;
      return (sigmaMps.along ** 2 * ((2 * lengthM.along) / Math.PI)) / (1 + x * x);
    },
    right: (omega) => transverse(omega, 'right'),
    up: (omega) => transverse(omega, 'up'),
  };
  const transverse = (omega: number, axis: Axis): number => {
    const x = lengthM[axis] * omega;
    return (sigmaMps[axis] ** 2 * (lengthM[axis] / Math.PI) * (1 + 3 * x * x)) / (1 + x * x) ** 2;
  };

  it.each(axes)('have the stated spectrum %s', (axis) => {
    const size = 16384;
    const fft = new FFT(size);
    const window = Float64Array.from(
      { length: size },
      (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / size),
    );
    const windowPower = window.reduce((sum, w) => sum + w * w, 0);
    const power = new Float64Array(size / 2);
    const block = new Array<number>(size);
    const out = fft.createComplexArray() as number[];
    let blocks = 0;
    for (let start = 0; start + size <= SAMPLES; start += size) {
      for (let i = 0; i < size; i++) block[i] = run[axis][start + i]! * window[i]!;
      fft.realTransform(out, block);
      for (let k = 1; k < size / 2; k++) power[k] = power[k]! + out[2 * k]! ** 2 + out[2 * k + 1]! ** 2;
      blocks++;
    }
    // Density over angular frequency, one-sided: 2 dt / (2 pi sum w^2); over spatial frequency times V.
    const scale = (2 * dtS * tasMps) / (2 * Math.PI * windowPower * blocks);
    const omegaOf = (k: number): number => (2 * Math.PI * k) / (size * dtS * tasMps);
    let compared = 0;
    for (let low = 3; low < size / 40; low = Math.ceil(low * 1.26)) {
      const high = Math.ceil(low * 1.26);
      let found = 0;
      let stated = 0;
      for (let k = low; k < high; k++) {
        found += power[k]! * scale;
        stated += formula[axis](omegaOf(k));
      }
      // 131 blocks: one standard error of one line is 9 %, of a band less; four of them, plus the 1 %
      // that sampling folds back at the upper end.
      const band = 4 * Math.sqrt(1.5 / (blocks * (high - low))) + 0.01;
      expect(Math.abs(found / stated - 1), `${axis}, lines ${low} to ${high}`).toBeLessThan(band);
      compared++;
    }
    expect(compared).toBeGreaterThan(15);
  });

  // Section 4: 65 kt, 300 ft, dt .02 s: phi = .9973921 RECOMPUTED. One lag of our run at dt 1/60 s is
  // phi^(1/60/.02), and the exact filter does not care about the step.
  it('keep from step to step what the exact filter keeps', () => {
    const kept = meanProduct(run.along, 1) / meanProduct(run.along, 0);
    expect(Math.abs(kept - 0.9973921 ** (dtS / 0.02))).toBeLessThan(0.0002);
  });
});

describe('a coarse step', () => {
  // The transition is exact, so one step a second (more than a length of w at 100 ft) has the same statistics:
  // 200,000 nearly independent samples, one standard error of sigma .2 %, of the correlation .002.
  it('has the same standard deviation and autocorrelation', () => {
    const at = STREAM_SLOTS.length;
    const memory = new Float64Array(at + TURBULENCE_SLOTS.length);
    const low = mFromFt(100);
    beginStream(memory, 0, seedStream('truth/coarse'));
    beginTurbulence(memory, at, 0);
    const coarse: Record<Axis, Float64Array> = {
      along: new Float64Array(200_000),
      right: new Float64Array(200_000),
      up: new Float64Array(200_000),
    };
    for (let i = 0; i < 200_000; i++) {
      stepTurbulence(memory, at, 0, 1, moderate, low, tasMps, POINT);
      for (const axis of axes) coarse[axis][i] = memory[at + offset[axis]]!;
    }
    const sHorizontal = tasMps / horizontalLengthM(low);
    const sVertical = tasMps / verticalLengthM(low);
    const lagOne: Record<Axis, number> = {
      along: Math.exp(-sHorizontal),
      right: (1 - sHorizontal / 2) * Math.exp(-sHorizontal),
      up: (1 - sVertical / 2) * Math.exp(-sVertical),
    };
    const sigma: Record<Axis, number> = {
      along: horizontalSigmaMps('moderate', low),
      right: horizontalSigmaMps('moderate', low),
      up: verticalSigmaMps('moderate'),
    };
    for (const axis of axes) {
      const variance = meanProduct(coarse[axis], 0);
      expect(Math.abs(Math.sqrt(variance) / sigma[axis] - 1), axis).toBeLessThan(0.015);
      expect(Math.abs(meanProduct(coarse[axis], 1) / variance - lagOne[axis]), axis).toBeLessThan(0.012);
    }
  });
});

describe('the discrete gust', () => {
  // (formula from memory, pre-2017 14 CFR 23.333): share of the peak at 0, 1/4, 1/2, 3/4 and all of the
  // gust: 3.81 and 7.62 m/s of 7.62. 4.7: .7322 of 5 at a quarter of the rise.
  it.each([
    [0, 0],
    [0.125, 0.7322 / 5],
    [0.25, 3.81 / 7.62],
    [0.5, 1],
    [0.75, 0.5],
    [1, 0],
  ])('after %d of its time has %d of its strength', (time, share) => {
    const memory = Float64Array.of(time * 8, 8);
    expect(Math.abs(gustShare(memory, 0) - share)).toBeLessThan(0.00002);
  });
});
