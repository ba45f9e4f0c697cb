import { createPilot } from '../pilot/pilot.ts';
import type { ControlSource } from '../session/source.ts';
import { ktFromMps, mFromFt } from '../units/conversions.ts';
import type { Approach } from './approach.ts';
import { type Flown, instantAt } from './flown.ts';
import { flyOn } from './future.ts';
import type { Look } from './look.ts';
import { isStyleLeg } from './root/own/style.ts';

/**
 * What an instant of an approach is worth. `go-around`: from there on the model pilot, taking over, does not bring it
 * inside the tolerances any more, or a gate has been failed. `recoverable`: it still does, from there or from a
 * later place that the flight came to. `stabilised`: that, and as planned where it is.
 */
export type TrailColour = 'stabilised' | 'recoverable' | 'go-around';

/** The trail has this colour from here to the next piece. */
export interface TrailPiece {
  readonly fromS: number;
  readonly toS: number;
  readonly colour: TrailColour;
}

export interface TrailProgress {
  readonly flightsFlown: number;
  readonly done: number;
}

/** Between two instants that are flown on from. */
const EVERY_S = 2;

/**
 * Colours an approach from abeam the threshold to the last gate. Flown on from the gate backwards, until the model
 * pilot settles it: what leads to there is no worse. One flight between two yields; returns the pieces, the
 * earliest first.
 */
export function* colourTrail(
  flown: Flown,
  approach: Approach,
): Generator<TrailProgress, readonly TrailPiece[]> {
  const { circuit, lastGateS, firstBad } = approach;
  if (lastGateS === null) return [];
  const looks = looksOfApproach(flown, approach, lastGateS);
  const failedS = firstBad?.atS ?? Number.POSITIVE_INFINITY;
  let lost = approach.settled ? looks.length : looks.findIndex((look) => look.timeS > failedS);
  if (lost < 0) lost = looks.length;
  let flightsFlown = 0;
  while (!approach.settled && lost > 0) {
    yield { flightsFlown, done: 1 - lost / looks.length };
    flightsFlown += 1;
    if (settlesFrom(flown, (looks[lost - 1] as Look).timeS, circuit)) break;
    lost -= 1;
  }
  const pieces: TrailPiece[] = [];
  for (const [i, look] of looks.entries()) {
    const colour = i >= lost ? 'go-around' : isAsPlanned(flown, look) ? 'stabilised' : 'recoverable';
    const last = pieces[pieces.length - 1];
    const toS = Math.min(lastGateS, look.timeS + EVERY_S);
    if (last?.colour === colour) pieces[pieces.length - 1] = { ...last, toS };
    else pieces.push({ fromS: look.timeS, toS, colour });
  }
  return pieces;
}

/** Whether the model pilot, taking over at this time, brings the approach inside its tolerances. */
export const settlesFrom = (flown: Flown, timeS: number, circuit: number): boolean => {
  const { model, flight, briefing } = flown;
  const pilot = createPilot(model, flight.plan, null, briefing) as ControlSource<unknown>;
  return flyOn(flown, instantAt(flown, timeS), pilot, circuit).approach.settled;
};

const looksOfApproach = (flown: Flown, { circuit }: Approach, lastGateS: number): Look[] => {
  const stretches = flown.memory.stretches.filter((stretch) => stretch.circuit === circuit);
  const fromS = stretches[0]?.fromS ?? 0;
  const mine = flown.looks.filter((look) => look.timeS >= fromS && look.timeS < lastGateS);
  const begin =
    mine.find((look) => look.leg === 'downwind' && look.xM <= 0) ?? mine.find((look) => isLate(look));
  return begin === undefined
    ? []
    : mine.filter((look) => look.timeS >= begin.timeS && look.timeS % EVERY_S === 0);
};

const LATE = new Set(['turn-to-base', 'base', 'turn-to-final', 'final']);
const isLate = (look: Look): boolean => LATE.has(look.leg);

/** Before final: near the planned descent and the planned speed (FAA-S-ACS-6 III.B: altitude ±100 ft, airspeed ±10 kt). */
const HEIGHT_M = mFromFt(100);
const SPEED_KT = 10;

const isAsPlanned = ({ briefing }: Flown, look: Look): boolean => {
  if (look.leg === 'final') return look.faults.length === 0;
  const leg = look.leg.replace('turn-to-', '');
  if (!isStyleLeg(leg)) return false;
  const wantedMps = leg === 'final' ? briefing.habits.base.iasMps : briefing.habits[leg].iasMps;
  return (
    Math.abs(look.heightM - look.plannedHeightM) <= HEIGHT_M &&
    (look.leg !== leg || Math.abs(ktFromMps(look.iasMps - wantedMps)) <= SPEED_KT)
  );
};
