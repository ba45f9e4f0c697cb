import { GATES_FT } from '../circuit/stabilised.ts';
import type { LessonMemory } from '../lesson/memory.ts';

/** How an approach stood at its gates: what the search for the root has to bring inside the tolerances. */
export interface Approach {
  readonly circuit: number;
  /** Every gate that decides was passed stabilised, the last one included, and no safety stop came before it. */
  readonly settled: boolean;
  /** What was not as it should be, gate by gate, in the lesson's words. */
  readonly faults: readonly string[];
  /** The first gate that was passed unstabilised; null when none was. */
  readonly firstBad: {
    readonly atS: number;
    readonly heightFt: number;
    readonly why: readonly string[];
  } | null;
  /** The last gate that was passed, stabilised or not; null when the approach never came to one. */
  readonly lastGateS: number | null;
}

/** Height of the last call: below it the approach is what it is. */
export const LAST_GATE_FT = Math.min(...GATES_FT);

/** An approach as the lesson's memory has it, counting from a time on. */
export const approachOf = (m: LessonMemory, circuit: number, fromS = 0): Approach => {
  const gates = m.gates.filter((gate) => gate.circuit === circuit && gate.atS >= fromS);
  const deciding = gates.filter((gate) => gate.decides);
  const bad = deciding.find((gate) => gate.why.length > 0) ?? null;
  const last = gates[gates.length - 1] ?? null;
  const passed = deciding.some((gate) => gate.heightFt === LAST_GATE_FT);
  const until = last?.atS ?? m.endS;
  const unsafe = m.safety.filter((stop) => stop.atS >= fromS && stop.atS <= until).map((stop) => stop.what);
  const faults = [
    ...deciding.flatMap((gate) => gate.why.map((why) => `${gate.heightFt} ft: ${why}`)),
    ...unsafe,
  ];
  return {
    circuit,
    settled: passed && faults.length === 0,
    faults,
    firstBad: bad === null ? null : { atS: bad.atS, heightFt: bad.heightFt, why: bad.why },
    lastGateS: last?.atS ?? null,
  };
};

/** Every circuit that came down to a gate. */
export const circuitsWithGates = (m: LessonMemory): readonly number[] => [
  ...new Set(m.gates.map((gate) => gate.circuit)),
];
