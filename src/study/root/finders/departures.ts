import { AS_PLANNED, type Style } from '../own/style.ts';
import type { Departure, Finder } from './departure.ts';
import { findDrift } from './drift.ts';
import { findFlap } from './flap.ts';
import { findPower } from './power.ts';
import type { Span } from './span.ts';
import { findSpeed, findTrim } from './speed.ts';
import { findShallowTurn, findTurns } from './turns.ts';
import { findDescent, findHeight } from './vertical.ts';

const FINDERS: readonly Finder[] = [
  findTurns,
  findShallowTurn,
  findDrift,
  findHeight,
  findDescent,
  findPower,
  findSpeed,
  findFlap,
  findTrim,
];

/** High or low by more than this where a leg began, its speed was an answer to that. */
const OFF_M = 20;

/**
 * A speed that something else explains is no departure of its own: a force in the hand that was never trimmed away;
 * too much power or too little on the same leg; or the attempt to mend what was already wrong when the leg
 * began, as in diving at a runway that is too near.
 */
const isExplained = (speed: Departure, span: Span, all: readonly Departure[]): boolean => {
  if (all.some((other) => other.kind === 'trim')) return true;
  if (all.some((other) => other.kind === 'power' && other.leg === speed.leg && other.sense === speed.sense))
    return true;
  const begun = span.looks.find((look) => look.leg === speed.leg);
  if (begun === undefined || speed.leg === 'downwind') return false;
  const offM = begun.heightM - begun.plannedHeightM;
  return offM * speed.sense > OFF_M && all.some((other) => other !== speed && other.atS < speed.atS);
};

/** The power of level flight, on the leg on which a late descent had not yet begun: the descent's, not its own. */
const isStillLevel = (power: Departure, all: readonly Departure[]): boolean => {
  const descent = all.find((other) => other.kind === 'descent');
  if (descent === undefined || power.sense < 0) return false;
  return power.atS < descent.atS + descent.size;
};

/** Descending in parallel with the plan from a downwind that was too high or too low. */
const isFromWrongHeight = (power: Departure, all: readonly Departure[]): boolean =>
  power.leg === 'downwind' && all.some((other) => other.kind === 'height' && other.sense === power.sense);

/** Everything on the way to the gate that was done otherwise than planned, the earliest first. */
export const departuresOf = (span: Span): readonly Departure[] => {
  const found = FINDERS.flatMap((find) => find(span)).sort((a, b) => a.atS - b.atS);
  return found.filter((departure) => {
    if (departure.kind === 'speed') return !isExplained(departure, span, found);
    return (
      departure.kind !== 'power' || !(isStillLevel(departure, found) || isFromWrongHeight(departure, found))
    );
  });
};

/** The style of a flight: all its departures together. */
export const styleOf = (departures: readonly Departure[]): Style =>
  departures.reduce((style, departure) => departure.keep(style), AS_PLANNED);
