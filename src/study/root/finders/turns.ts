import type { TurnFact } from '../../../lesson/memory.ts';
import { saidOf } from '../../../lesson/watch/facts.ts';
import { degFromRad, radFromDeg } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import type { Look } from '../../look.ts';
import type { StyleLeg } from '../own/style.ts';
import type { Departure, Finder } from './departure.ts';
import { type Span, turnOf } from './span.ts';

/** Turns nearer to their place than this were made there. */
const LEAST_S = 2;
/** From the decision to the wings being seen to bank, by the lesson's own look at when a turn begins. */
const BANKING_S = 0.8;
const BEFORE_S = 2;

const lookNear = ({ looks }: Span, timeS: number): Look | null =>
  looks.reduce<Look | null>(
    (best, look) =>
      best === null || Math.abs(look.timeS - timeS) < Math.abs(best.timeS - timeS) ? look : best,
    null,
  );

/** Metres past the place of the plan's turn where this one began, along the leg before. */
const lateM = ({ flown }: Span, onto: StyleLeg, turn: TurnFact, look: Look): number => {
  const { plan, corners } = flown.briefing;
  const began = BANKING_S * look.groundspeedMps;
  if (onto === 'base') return corners.base.fromX - turn.fromAlongM - began;
  if (onto === 'final') return corners.final.fromY - turn.fromOutM - began;
  return turn.fromOutM - (plan.spacingM - (corners.downwind.toY - corners.downwind.fromY)) - began;
};

const ordered = ({ flown, circuit }: Span): boolean => {
  const { memory, lesson } = flown;
  const facts = { circuit, stretches: [], turns: [], touchdown: null, m: memory, lesson };
  return saidOf(facts, 'extend') !== null || saidOf(facts, 'number-two') !== null;
};

const turnDeparture = (span: Span, onto: StyleLeg): readonly Departure[] => {
  const turn = turnOf(span, onto);
  const look = turn === null ? null : lookNear(span, turn.fromS);
  if (turn === null || look === null) return [];
  const late = lateM(span, onto, turn, look);
  const speed = Math.max(15, look.groundspeedMps);
  const lateS = late / speed;
  if (Math.abs(lateS) < LEAST_S) return [];
  const size = Math.max(1, Math.round(Math.abs(lateS)));
  const wasLate = late > 0;
  // Turned late, it should have been turned at the plan's place; turned early, it was done at its own
  const atS = wasLate ? turn.fromS - lateS : turn.fromS;
  return [
    {
      kind: 'turn',
      leg: `turn-to-${onto}`,
      atS,
      forkS: Math.max(span.fromS, atS - BEFORE_S),
      size,
      unit: 's',
      sense: wasLate ? 1 : -1,
      suggests: onto !== 'base' || !ordered(span),
      keep: (style) => ({ ...style, turnLateM: { ...style.turnLateM, [onto]: late } }),
      mend: (style, units) => ({
        ...style,
        turnLateM: {
          ...style.turnLateM,
          [onto]: units >= size ? 0 : late - Math.sign(late) * units * speed,
        },
      }),
      say: (units) => `Turn ${onto} ${fixed(units)} s ${wasLate ? 'earlier' : 'later'}.`,
    },
  ];
};

export const findTurns: Finder = (span) =>
  (['downwind', 'base', 'final'] as const).flatMap((onto) => turnDeparture(span, onto));

/** Shallower than this share of the plan's bank the turn was not what it was meant to be. */
const SHALLOW_SHARE = 0.75;
const OVERSHOOT_M = 30;

/** Bank that was held in the turn, the rolling in and out left away. */
const heldBankRad = ({ looks }: Span): number => {
  const banks = looks
    .filter((look) => look.leg === 'turn-to-final')
    .slice(ROLLING_LOOKS, -ROLLING_LOOKS)
    .map((look) => Math.abs(look.bankRad))
    .sort((a, b) => a - b);
  return banks[banks.length >> 1] ?? 0;
};
const ROLLING_LOOKS = 3;

/** A turn to final that went beyond the centreline because it was too shallow. */
export const findShallowTurn: Finder = (span) => {
  const turn = turnOf(span, 'final');
  const bankRad = heldBankRad(span);
  const wantedRad = Math.abs(span.flown.flight.plan.turns.final.bankRad);
  if (turn === null || bankRad === 0) return [];
  if (bankRad > SHALLOW_SHARE * wantedRad || turn.overshootM < OVERSHOOT_M) return [];
  const size = Math.max(1, Math.round(degFromRad(wantedRad - bankRad)));
  return [
    {
      kind: 'bank',
      leg: 'turn-to-final',
      atS: turn.fromS,
      forkS: Math.max(span.fromS, turn.fromS - BEFORE_S),
      size,
      unit: 'deg',
      sense: -1,
      suggests: true,
      keep: (style) => ({ ...style, finalBankRad: bankRad }),
      mend: (style, units) => ({
        ...style,
        finalBankRad: units >= size ? null : bankRad + radFromDeg(units),
      }),
      say: (units) =>
        `Bank ${fixed(degFromRad(bankRad) + units)} degrees in the turn to final, not ${fixed(degFromRad(bankRad))}.`,
    },
  ];
};
