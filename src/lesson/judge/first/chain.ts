import type { Finding } from './finding.ts';

/**
 * What leads to what, by way of how the aeroplane stands: high, low, fast, slow, wide of the line, steep, without
 * flap, floating, dropping, swerving. Common practice of instructing; the states are nobody's measure, they only tie
 * a cause to what came of it.
 */
type State =
  | 'high'
  | 'low'
  | 'fast'
  | 'slow'
  | 'line'
  | 'steep'
  | 'turning'
  | 'sink'
  | 'flap'
  | 'far'
  | 'hard'
  | 'hop'
  | 'flat'
  | 'swerve'
  | 'stall'
  | 'glide';

/** What a finding leaves the aeroplane in. */
const MAKES: Readonly<Record<string, readonly State[]>> = {
  'turned-back': ['steep', 'slow', 'low', 'glide', 'line', 'hard', 'swerve'],
  'nose-late': ['slow', 'glide'],
  'braked-first': ['far'],
  'engine-failure-speed:low': ['slow', 'glide'],
  'downwind-height:high': ['high'],
  'downwind-height:low': ['low'],
  'downwind-spacing:low': ['high', 'line', 'steep'],
  'downwind-spacing:high': ['low'],
  'base-turn-angle:high': ['low'],
  'base-turn-angle:low': ['high', 'turning'],
  'descent-late': ['high'],
  'base-height:high': ['high'],
  'base-height:low': ['low'],
  'base-flap:low': ['flap'],
  'final-overshoot:high': ['line', 'steep', 'turning'],
  'final-track:low': ['line'],
  'final-track:high': ['line'],
  'turn-to-final-bank:high': ['steep'],
  'final-height:high': ['high'],
  'final-height:low': ['low'],
  'final-flap:low': ['flap'],
  'little-power': ['low', 'slow'],
  'final-speed:high': ['fast'],
  'final-speed:low': ['slow'],
  'final-lights:low': ['low'],
  'final-lights:high': ['high'],
  'carried-speed': ['far', 'hop'],
  'levelled-high': ['stall', 'hard', 'far'],
  'round-out-height:high': ['stall', 'hard', 'far'],
  'rounded-out-quickly': ['stall', 'hard', 'far', 'hop'],
  'balloon-pulled': ['stall', 'hard', 'far', 'hop'],
  'balloon-fast': ['stall', 'hard', 'far', 'hop'],
  'balloon-gust': ['stall', 'hard', 'far', 'hop'],
  'landed-flat': ['hard', 'hop', 'flat', 'swerve'],
  'rounded-out-late': ['hard', 'hop', 'flat'],
  'round-out-height:low': ['hard', 'hop', 'flat'],
  'power-kept': ['far', 'hop'],
  pushed: ['hard', 'hop', 'flat'],
  dropped: ['hard', 'hop'],
  'touchdown-nose-first:high': ['hard', 'hop', 'swerve'],
  'touchdown-sink:high': ['hop', 'swerve'],
  'not-straightened': ['swerve'],
  'touchdown-crab:low': ['swerve'],
  'touchdown-crab:high': ['swerve'],
  'touchdown-drift:low': ['swerve'],
  'touchdown-drift:high': ['swerve'],
  'brakes-locked': ['swerve'],
  'touchdown-point:high': ['far'],
  'float:high': ['far'],
};

/** What one state leads to. Whoever is high and chases it comes out low, and the other way round it is too late. */
const LEADS: Readonly<Partial<Record<State, readonly State[]>>> = {
  high: ['fast', 'sink', 'far', 'low'],
  low: ['slow'],
  fast: ['far', 'hop'],
  slow: ['stall', 'hard', 'low'],
  flap: ['fast', 'far'],
  line: ['steep', 'turning'],
  steep: ['stall', 'sink'],
  turning: ['steep', 'line'],
  sink: ['hard'],
  stall: ['hard'],
  hop: ['hard', 'far'],
};

/** What a finding comes from. */
const NEEDS: Readonly<Record<string, readonly State[]>> = {
  'ended-crashed': ['hard', 'stall', 'steep', 'glide', 'flat'],
  'ended-loss-of-control': ['stall', 'steep', 'slow'],
  'ended-landed-short': ['low', 'glide'],
  'ended-landed-beside': ['line', 'glide'],
  'ended-landed-beyond': ['far', 'fast', 'high'],
  'ended-off-the-end': ['far', 'fast'],
  'ended-off-the-side': ['swerve', 'line', 'glide'],
  // Without flap the stall comes sooner
  warner: ['slow', 'steep', 'stall', 'flap'],
  slow: ['slow', 'steep', 'stall', 'flap'],
  'bank-low': ['line', 'turning'],
  'bank-final-turn': ['line', 'turning'],
  'four-reds': ['low'],
  'crosswind-height:high': [],
  'base-height:high': ['high'],
  'base-height:low': ['low'],
  'final-height:high': ['high'],
  'final-height:low': ['low'],
  'final-lights:high': ['high'],
  'final-lights:low': ['low'],
  'final-speed:high': ['high', 'flap'],
  'final-speed:low': ['slow'],
  'final-flap:low': ['flap'],
  'final-overshoot:high': ['line', 'turning'],
  'turn-to-final-bank:high': ['line', 'turning'],
  'little-power': [],
  'carried-speed': ['fast', 'flap'],
  'balloon-fast': ['fast'],
  'float:high': ['far', 'fast', 'high', 'stall'],
  'touchdown-point:high': ['far', 'fast', 'high'],
  'touchdown-point:low': ['low', 'sink', 'hard'],
  'touchdown-sink:high': ['hard', 'stall', 'slow'],
  'touchdown-bounces:high': ['hop', 'hard', 'fast'],
  'touchdown-nose-first:high': ['flat', 'fast'],
  'round-out-height:high': ['stall', 'far'],
  'round-out-height:low': ['hard', 'flat'],
  'stop-remaining:low': ['far', 'fast'],
  'abandoned-remaining:low': ['far'],
  'landing-roll-centreline:low': ['swerve'],
  'landing-roll-centreline:high': ['swerve'],
  'touchdown-crab:low': ['swerve'],
  'touchdown-crab:high': ['swerve'],
  'brakes:high': [],
  dropped: ['stall', 'slow'],
  pushed: ['stall', 'far'],
  'engine-failure-turn:high': ['glide'],
  'engine-failure-speed:low': ['glide', 'steep', 'slow'],
};

/** What was wrong at a gate, and what else asks for a go-around, as states. */
const FAULT_NEEDS: Readonly<Record<string, readonly State[]>> = {
  turning: ['turning', 'line'],
  high: ['high'],
  low: ['low'],
  centreline: ['line'],
  fast: ['fast', 'high', 'flap'],
  slow: ['slow'],
  bank: ['steep', 'turning', 'line'],
  sink: ['sink', 'high'],
  flap: ['flap'],
  idle: ['high', 'fast'],
  'first-third': ['far', 'fast', 'high'],
  'high-bounce': ['hop', 'hard', 'fast'],
  drift: ['swerve'],
};

const spread = (states: readonly State[]): ReadonlySet<State> => {
  const all = new Set<State>(states);
  for (const state of all) for (const next of LEADS[state] ?? []) all.add(next);
  return all;
};

/** Whether one finding says all that the other does. */
export const covers = (cause: Finding, effect: Finding): boolean =>
  cause.circuit === effect.circuit && cause.covers.some((id) => effect.key.startsWith(`${id}:`));

/** Whether one finding may have come of another, of the same circuit and before it. */
export const ledTo = (cause: Finding, effect: Finding): boolean => {
  if (cause === effect || cause.circuit !== effect.circuit || cause.place >= effect.place) return false;
  // What was wrong at the gate is what going on goes on in
  const atGate = cause.key === 'went-on' ? cause.needs.flatMap((need) => FAULT_NEEDS[need] ?? []) : [];
  if (covers(cause, effect)) return true;
  const made = spread([...(MAKES[cause.key] ?? []), ...atGate]);
  const needed = [...(NEEDS[effect.key] ?? []), ...effect.needs.flatMap((need) => FAULT_NEEDS[need] ?? [])];
  return needed.some((state) => made.has(state));
};
