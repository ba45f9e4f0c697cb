import type { Briefing } from './briefing/briefing.ts';
import { flyBase } from './legs/base.ts';
import { flyCrosswind } from './legs/crosswind.ts';
import { flyDownwind } from './legs/downwind.ts';
import { flyExtended } from './legs/extended.ts';
import { flyFinal } from './legs/final.ts';
import { flyGlide } from './legs/glide.ts';
import { flyGoAround } from './legs/go-around.ts';
import { landAhead } from './legs/land-ahead.ts';
import { rollOut } from './legs/landing-roll.ts';
import { flyOrbit } from './legs/orbit.ts';
import { roundOut } from './legs/round-out.ts';
import { flySlip } from './legs/slip.ts';
import { takeOff } from './legs/take-off.ts';
import { flyUpwind } from './legs/upwind.ts';
import type { PilotMemory } from './memory.ts';
import type { PhaseName } from './phase-name.ts';
import type { PilotView } from './view.ts';

/** One look's worth of flying: reads the view, sets the hands, may begin another phase. */
export type Phase = (b: Briefing, m: PilotMemory, v: Readonly<PilotView>) => void;

export const PHASES: Readonly<Record<PhaseName, Phase>> = {
  'take-off': takeOff,
  upwind: flyUpwind,
  crosswind: flyCrosswind,
  downwind: flyDownwind,
  base: flyBase,
  final: flyFinal,
  'round-out': roundOut,
  'landing-roll': rollOut,
  'go-around': flyGoAround,
  extended: flyExtended,
  orbit: flyOrbit,
  glide: flyGlide,
  slip: flySlip,
  'land-ahead': landAhead,
};
