import { RHO0_KGPM3 } from '../../atmosphere/isa.ts';
import type { Shape } from '../shape.ts';

/** Indicated airspeed of the unaccelerated stall with a flap stage: sqrt(2 W / (rho0 S CLmax)). */
export const stallIasMps = (shape: Shape, stage: number): number => {
  const lift = shape.aeroplane.flap.stages[stage]?.maximumLiftCoefficient;
  if (lift === undefined) throw new Error(`${shape.aeroplane.id}: there is no flap stage ${stage}`);
  return Math.sqrt((2 * shape.weightN) / (RHO0_KGPM3 * shape.areaM2 * lift));
};
