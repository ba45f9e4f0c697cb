import { CIRCUIT_LEGS, type CircuitLeg, type CircuitPlan } from '../../circuit/types.ts';
import { degFromRad } from '../../units/conversions.ts';
import type { Colours } from '../pen/colours.ts';
import { keyed } from '../pen/keyed.ts';
import type { Pen } from '../pen/pen.ts';
import type { PlanCamera } from './camera.ts';

/** Half the corridor: a tenth of a mile in all, and never too thin to see. */
const CORRIDOR_M = 185;
const CORRIDOR_LEAST_PX = 12;
const NAME_OFFSET_PX = 17;
/** A leg shorter than this on the screen goes without its name. */
const NAMED_PX = 60;

const paths = new WeakMap<CircuitPlan, Float64Array>();

/** The planned path over the ground, east and north by turns; made once for every plan. */
export const groundPath = (plan: CircuitPlan): Float64Array => {
  let points = paths.get(plan);
  if (points === undefined) {
    points = Float64Array.from(plan.path.flatMap((point) => [point.eastM, point.northM]));
    paths.set(plan, points);
  }
  return points;
};

/** The planned circuit over the ground: a faint corridor with its middle, and the name of every leg. */
export function drawCorridor(pen: Pen, colours: Colours, camera: PlanCamera, plan: CircuitPlan): void {
  pen.trace(groundPath(plan));
  pen.use(colours.corridor, 0.17);
  pen.path(Math.max(CORRIDOR_LEAST_PX, CORRIDOR_M * camera.pxPerM));
  pen.use(colours.corridor, 0.9);
  pen.path(1.3);
}

/** Names lie along their legs outside the circuit, always readable from below or from the right. */
export function drawLegNames(
  pen: Pen,
  colours: Colours,
  camera: PlanCamera,
  plan: CircuitPlan,
  leg: string,
): void {
  const { px } = camera;
  for (let k = 0; k < CIRCUIT_LEGS.length; k += 1) {
    const name = CIRCUIT_LEGS[k] as CircuitLeg;
    const { from, to } = plan.legs[name];
    camera.place(from);
    const ax = px[0]!;
    const ay = px[1]!;
    camera.place(to);
    const bx = px[0]!;
    const by = px[1]!;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length < NAMED_PX) continue;
    // Outside: right of the way flown in a left-hand circuit. The upwind leg shares its line with the final.
    const offset = -plan.side * Math.max(NAME_OFFSET_PX, (CORRIDOR_M * camera.pxPerM) / 2 + 10);
    const angle = Math.atan2(dy, dx);
    // A vertical name reads from below, whichever way the leg is flown.
    const upright = Math.abs(angle + 0.02) > Math.PI / 2 ? angle + Math.PI : angle;
    const share = name === 'upwind' ? 0.7 : name === 'final' ? 0.45 : 0.5;
    pen.use(name === leg ? colours.corridorText : colours.inkSoft);
    pen.turnedText(
      name === leg ? 'strong' : 'label',
      name,
      ax + dx * share - (dy / length) * offset,
      ay + dy * share + (dx / length) * offset,
      upright,
    );
  }
}

const THRESHOLD = { eastM: 0, northM: 0 } as const;

const baseTurnText = keyed((deg: number) => `base turn in this wind ${deg}°`);

/** From the threshold to where the base turn begins in this wind, with its angle behind the wing. */
export function drawBaseTurnLine(pen: Pen, colours: Colours, camera: PlanCamera, plan: CircuitPlan): void {
  const { from } = plan.turns.base;
  const { px } = camera;
  camera.place(THRESHOLD);
  const x0 = px[0]!;
  const y0 = px[1]!;
  camera.place(from);
  const x1 = px[0]!;
  const y1 = px[1]!;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length < 40) return;
  pen.use(colours.ink, 0.6);
  pen.dashed(x0, y0, x1 + (dx / length) * 14, y1 + (dy / length) * 14, 1.3, 2.5, 5);
  pen.ring(x1, y1, 4, 1.4);
  const text = baseTurnText(Math.round(degFromRad(plan.baseTurnAngleRad)));
  if (length < pen.widthPx('small', text) + 60) return;
  const angle = Math.atan2(dy, dx);
  const upright = Math.abs(angle) > Math.PI / 2 ? angle + Math.PI : angle;
  const nx = Math.sin(upright);
  const ny = -Math.cos(upright);
  pen.use(colours.ink, 0.85);
  pen.turnedText('small', text, x0 + dx * 0.55 + nx * 10, y0 + dy * 0.55 + ny * 10, upright);
}
