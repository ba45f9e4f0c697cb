import { clamp, mix } from '../maths/functions.ts';
import { lookup } from '../maths/tables.ts';
import { mpsFromFpm } from '../units/conversions.ts';
import type { Briefing } from './briefing/briefing.ts';
import type { PilotMemory } from './memory.ts';
import type { PilotView } from './view.ts';

/** Which part of the circuit this is. */
type Where = Readonly<Pick<PilotMemory, 'phase' | 'turning'>>;

/** Distance left to the ground along the circuit, judged from where the aeroplane is and where it points. */
export const leftToGoM = (b: Briefing, m: Where, v: Readonly<PilotView>): number => {
  const { base, final } = b.corners;
  const turned = (fromRad: number): number => clamp((v.trackRad - fromRad) / (Math.PI / 2), 0, 1);
  // Base flown nearer the threshold than planned makes final shorter
  const nearer = final.fromX - v.xM;
  if (m.phase === 'downwind') return base.toGoFromM + (v.xM - base.fromX);
  if (m.phase === 'base') {
    if (!m.turning) return final.toGoFromM + Math.max(0, v.yM - final.fromY) + nearer;
    const through = v.trackRad < 0 ? turned(-Math.PI) : 0;
    const along = base.toGoFromM + through * (base.toGoToM - base.toGoFromM);
    return along + furtherOutM(mix(base.fromX, base.toX, through), v);
  }
  const through = turned(-Math.PI / 2);
  const along = final.toGoFromM + through * (final.toGoToM - final.toGoFromM);
  return along + furtherOutM(mix(final.fromX, final.toX, through), v);
};

/** A turn flown well beyond where it was planned leaves a longer way: base turned late, or by order. */
const furtherOutM = (plannedX: number, v: Readonly<PilotView>): number =>
  Math.max(0, plannedX - v.xM - AS_PLANNED_M);
const AS_PLANNED_M = 120; // our choice: no further out than a wobble of the turn

const CORRECTING_PER_S = 0.1; // tuned
const STEEPEST_MPS = mpsFromFpm(750); // common practice: no steeper in a light single
const AHEAD_M = 60; // tuned

/** Where the planned descent would be now, and the sink that joins it. */
export const plannedSink = (
  b: Briefing,
  m: Where,
  v: Readonly<PilotView>,
): { readonly heightM: number; readonly verticalSpeedMps: number } => {
  const toGoM = leftToGoM(b, m, v);
  const { toGoM: places, heightM: heights } = b.profile;
  const heightM = lookup(places, heights, toGoM);
  const steep = (heightM - lookup(places, heights, toGoM - AHEAD_M)) / AHEAD_M;
  planned.heightM = heightM;
  planned.verticalSpeedMps = clamp(
    -steep * v.groundspeedMps + CORRECTING_PER_S * (heightM - v.heightM),
    -STEEPEST_MPS,
    0,
  );
  return planned;
};

const planned = { heightM: 0, verticalSpeedMps: 0 };
