import { goAround } from '../../pilot/legs/go-around.ts';
import type { PilotMemory } from '../../pilot/memory.ts';
import { newPilotView, pilotView } from '../../pilot/view.ts';
import type { ControlSource } from '../../session/source.ts';
import type { Approach } from '../approach.ts';
import { type Flown, instantAt } from '../flown.ts';
import { flyStep, takeUp } from '../future.ts';
import { flyInStyle } from './own/own-way.ts';
import { AS_PLANNED } from './own/style.ts';
import type { AfterGate } from './result.ts';

const CLIMBED_M = 60;
const SECONDS = 60;

/** The model pilot with the decision made: power, attitude, configuration. */
const goingAround = (flown: Flown): ControlSource<unknown> => {
  const pilot = flyInStyle(flown, AS_PLANNED);
  const { runway, side } = flown.briefing;
  return {
    ...pilot,
    begin: (snapshot, controls) => {
      const m = pilot.begin(snapshot, controls) as PilotMemory;
      goAround(m, pilotView(snapshot, runway, side, newPilotView()), 'not stabilised at the gate');
      return m;
    },
  };
};

/** Whether going around from a time leads back up without a crash. */
const climbsAway = (flown: Flown, timeS: number): boolean => {
  const from = instantAt(flown, timeS);
  const aloft = takeUp(flown, from, goingAround(flown));
  const fromM = aloft.seen.heightM;
  for (let i = 0; i < SECONDS * 60 && aloft.seen.ended === null; i += 1) {
    flyStep(flown, aloft);
    if (aloft.seen.onGround) return false;
    if (aloft.seen.heightM > fromM + CLIMBED_M) return true;
  }
  return false;
};

/** What there was to do once the gate was passed: only this. Null where nothing was wrong, or it was done. */
export const afterGateOf = (flown: Flown, approach: Approach): AfterGate | null => {
  const { firstBad, circuit } = approach;
  if (firstBad === null) return null;
  if (flown.memory.goArounds.some((flew) => flew.circuit === circuit && flew.atS >= firstBad.atS))
    return null;
  return {
    atS: firstBad.atS,
    sentence: `Once past ${firstBad.heightFt} ft like this: go around. Power, attitude, configuration.`,
    flown: climbsAway(flown, firstBad.atS),
  };
};
