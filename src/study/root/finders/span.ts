import { lastWhere } from '../../../lesson/last-where.ts';
import type { TurnFact } from '../../../lesson/memory.ts';
import type { LegName } from '../../../lesson/names.ts';
import type { Approach } from '../../approach.ts';
import type { Flown } from '../../flown.ts';
import type { Look } from '../../look.ts';

/** One circuit up to the gate that settled it: where departures are looked for. */
export interface Span {
  readonly flown: Flown;
  readonly circuit: number;
  readonly fromS: number;
  /** The first gate that was passed unstabilised, else the last gate. */
  readonly toS: number;
  readonly looks: readonly Look[];
  readonly turns: readonly TurnFact[];
}

/** What was seen until a moment after the last gate still tells how the approach was flown. */
const AFTER_S = 2;

export const spanOf = (flown: Flown, approach: Approach): Span => {
  const { circuit } = approach;
  const { memory } = flown;
  const stretches = [...memory.stretches, memory.now].filter((stretch) => stretch.circuit === circuit);
  const fromS = stretches[0]?.fromS ?? 0;
  const toS = approach.firstBad?.atS ?? approach.lastGateS ?? memory.endS;
  // Going around is flown otherwise than an approach, and rightly
  const wentAround = memory.goArounds.some((goAround) => goAround.circuit === circuit);
  const lastS = wentAround ? toS : Math.max(toS, (approach.lastGateS ?? toS) + AFTER_S);
  return {
    flown,
    circuit,
    fromS,
    toS,
    looks: flown.looks.filter((look) => look.timeS >= fromS && look.timeS <= lastS),
    turns: memory.turns.filter((turn) => turn.circuit === circuit && turn.fromS <= toS),
  };
};

export const turnOf = ({ turns }: Span, onto: TurnFact['onto']): TurnFact | null =>
  lastWhere(turns, (turn) => turn.onto === onto);

/** The looks of a leg, from so many seconds after it began. */
export const looksOn = ({ looks }: Span, leg: LegName, settleS: number): readonly Look[] => {
  const mine = looks.filter((look) => look.leg === leg);
  const from = mine[0]?.timeS ?? 0;
  return mine.filter((look) => look.timeS - from >= settleS);
};

export const meanOver = (looks: readonly Look[], of: (look: Look) => number): number =>
  looks.length === 0 ? 0 : looks.reduce((sum, look) => sum + of(look), 0) / looks.length;

/** The last so many seconds. */
export const lastOf = (looks: readonly Look[], seconds: number): readonly Look[] => {
  const end = looks[looks.length - 1]?.timeS ?? 0;
  return looks.filter((look) => end - look.timeS <= seconds);
};
