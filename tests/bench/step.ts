// The core alone: what a simulated second costs, and the fixed step against general solvers.
import { aerodromeNamed, aeroplaneNamed } from '../../src/catalogue.ts';
import { beginStream, nextUniforms, seedStream } from '../../src/maths/random.ts';
import { begin, startControls } from '../../src/simulation/begin.ts';
import { prepare } from '../../src/simulation/model.ts';
import { derivative } from '../../src/simulation/motion/forces.ts';
import { integrate } from '../../src/simulation/motion/integrate.ts';
import { observe } from '../../src/simulation/observe.ts';
import { INTEGRATED, NOW, SEEN_LENGTH } from '../../src/simulation/places.ts';
import { MODEL_VERSION, type Scenario, STEP_HZ, STEP_S } from '../../src/simulation/scenario.ts';
import { shapeOf } from '../../src/simulation/shape.ts';
import { newSnapshot } from '../../src/simulation/snapshot.ts';
import { step } from '../../src/simulation/step.ts';
import { integratedAt, nowAt, steadyAt } from '../support/airborne.ts';
import { Solver } from '../support/odex.ts';
import { say } from './rows.ts';
import { bytesMade, cpuSideBySide } from './timing.ts';

const aeroplane = aeroplaneNamed('sandpiper');
const aerodrome = aerodromeNamed('curlew-sands');

const scenario = (turbulence: Scenario['weather']['turbulence']): Scenario => ({
  modelVersion: MODEL_VERSION,
  exercise: 'bench',
  aeroplane,
  aerodrome,
  runway: aerodrome.runway.ends[0].designator,
  weather: {
    windFromDegM: 250,
    windKt: 12,
    gustKt: 20,
    turbulence,
    temperatureC: 15,
    dewPointC: null,
    qnhHpa: 1013.25,
  },
  start: {
    at: {
      east_m: -3000,
      north_m: 0,
      height_ft: 1000,
      heading_deg: 220,
      ias_kt: 80,
      flap_deg: 10,
      gear: 'down',
      bank_deg: 0,
      flight_path_deg: 0,
    },
    trimmed: true,
    leg: null,
  },
  seed: 1,
  assists: { rudder: true },
  failures: [],
  circuits: 1,
});

/** Flies so many seconds by hands that move at every step. */
const flight = (turbulence: Scenario['weather']['turbulence'], seconds: number) => {
  const model = prepare(scenario(turbulence));
  const snapshot = newSnapshot();
  return (): void => {
    const state = begin(model);
    const controls = startControls(model);
    for (let i = 0; i < seconds * STEP_HZ; i += 1) {
      controls.elevator = 0.02 * ((i % 7) - 3);
      step(model, state, controls);
      observe(model, state, controls, snapshot);
    }
  };
};

const SECONDS = 150;
const [rough = 0, still = 0] = cpuSideBySide([flight('moderate', SECONDS), flight('none', SECONDS)], 15, 5);
say({
  name: 'step and observe, moderate turbulence, a simulated second',
  figure: (rough / SECONDS) * 1e6,
  unit: 'µs',
  sense: 'at most',
  budget: 40,
});
say({
  name: 'the same in still air',
  figure: (still / SECONDS) * 1e6,
  unit: 'µs',
  sense: 'at most',
  budget: null,
});
say({
  name: 'nine futures of 60 s, steps alone',
  figure: ((9 * 60 * rough) / SECONDS) * 1e3,
  unit: 'ms',
  sense: 'at most',
  budget: 60,
});
say({
  name: 'garbage of a step and its observe',
  figure: bytesMade(flight('moderate', SECONDS)) / (SECONDS * STEP_HZ),
  unit: 'B',
  sense: 'at most',
  budget: 300,
});

// The same minute of controls and wind, constant over each step, for every solver.
const ALTITUDE_M = 1000;
const STEPS = 60 * STEP_HZ;
const shape = shapeOf(aeroplane);
const steady = steadyAt(aeroplane, 80, { altitudeM: ALTITUDE_M, flightPathRad: 0 });
const seen = new Float64Array(SEEN_LENGTH);
const rate = new Float64Array(INTEGRATED);

type Weather = (now: Float64Array, stepNumber: number) => void;
type Advance = (now: Float64Array, y: Float64Array) => void;

const hands: Weather = (now, i) => {
  const t = i * STEP_S;
  now[NOW.aileron] = 0.3 * Math.sin(0.9 * t) * Math.cos(0.13 * t);
  now[NOW.rudder] = 0.2 * Math.sin(0.5 * t);
  now[NOW.elevatorRad] = steady.elevatorRad + 0.02 * Math.sin(0.35 * t) - 0.01 * Math.sin(1.1 * t);
  now[NOW.throttle] = 0.6 + 0.4 * Math.sin(0.2 * t);
};

const stream = new Float64Array(4);
beginStream(stream, 0, seedStream('bench'));
const jumps = new Float64Array(4 * STEPS);
nextUniforms(stream, 0, jumps, jumps.length);
const gusty: Weather = (now, i) => {
  hands(now, i);
  now[NOW.windEast] = 2 * jumps[4 * i]! - 1;
  now[NOW.windNorth] = 2 * jumps[4 * i + 1]! - 1;
  now[NOW.windUp] = jumps[4 * i + 2]! - 0.5;
  now[NOW.elevatorRad] = now[NOW.elevatorRad]! + 0.01 * (jumps[4 * i + 3]! - 0.5);
};

const flown = (weather: Weather, advance: Advance): Float64Array => {
  const now = nowAt(shape, steady, ALTITUDE_M);
  const y = integratedAt(steady, ALTITUDE_M);
  for (let i = 0; i < STEPS; i += 1) {
    weather(now, i);
    advance(now, y);
  }
  return y;
};

const ours: Advance = (now, y) => integrate(shape, now, y, STEP_S, seen);
const fine: Advance = (now, y) => {
  for (let i = 0; i < 16; i += 1) integrate(shape, now, y, STEP_S / 16, seen);
};
/** `odex` beginning anew at every step, as controls that jump oblige it to; one solver, first trial a whole step. */
const general = (tolerance: number): Advance => {
  const solver = new Solver(INTEGRATED);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.initialStepSize = STEP_S;
  const input = new Float64Array(INTEGRATED);
  return (now, y) => {
    const rates = (_: number, x: number[]): number[] => {
      input.set(x);
      derivative(shape, now, input, rate, seen);
      return [...rate];
    };
    y.set(solver.solve(rates, 0, [...y], STEP_S).y);
  };
};
/** Semi-implicit Euler at 120 Hz: rates first, then places and attitude from the new rates. */
const euler: Advance = (now, y) => {
  const dtS = STEP_S / 2;
  for (let half = 0; half < 2; half += 1) {
    derivative(shape, now, y, rate, seen);
    for (const i of [3, 4, 5, 9, 10, 11]) y[i] = y[i]! + dtS * rate[i]!;
    derivative(shape, now, y, rate, seen);
    for (const i of [0, 1, 2, 6, 7, 8]) y[i] = y[i]! + dtS * rate[i]!;
  }
};

const apartM = (a: Float64Array, b: Float64Array): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

const smoothTruth = flown(hands, fine);
say({
  name: 'error after a smooth minute',
  figure: apartM(flown(hands, ours), smoothTruth),
  unit: 'm',
  sense: 'at most',
  budget: 1e-6,
});
say({
  name: 'the same by semi-implicit Euler at 120 Hz',
  figure: apartM(flown(hands, euler), smoothTruth),
  unit: 'm',
  sense: 'at most',
  budget: null,
});

const gustyTruth = flown(gusty, fine);
const ourErrorM = apartM(flown(gusty, ours), gustyTruth);
const tolerance =
  [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12].find(
    (one) => apartM(flown(gusty, general(one)), gustyTruth) <= ourErrorM,
  ) ?? 1e-13;
say({
  name: 'error after a minute of new gusts at every step',
  figure: ourErrorM,
  unit: 'm',
  sense: 'at most',
  budget: null,
});
const [fixed = 1, solver = 1] = cpuSideBySide(
  [() => flown(gusty, ours), () => flown(gusty, general(tolerance))],
  7,
);
say({
  name: `faster than odex (tolerance ${tolerance}) at an error as small`,
  figure: solver / fixed,
  unit: 'times',
  sense: 'at least',
  budget: 3,
});
