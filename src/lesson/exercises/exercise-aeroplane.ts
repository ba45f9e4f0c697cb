import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { Exercise } from './exercise.ts';

/** The aeroplane with the flap plan and the approach speeds that the exercise asks for; nothing about it changes. */
export const asExercised = ({ flap, approachSpeed }: Exercise, aeroplane: Aeroplane): Aeroplane => {
  const { speeds } = aeroplane;
  const last = aeroplane.flap.stages.length - 1;
  const plan = {
    ...aeroplane.plan,
    ...(flap === 'up' && { downwindStage: 0, baseStage: 0, finalStage: 0, landingStage: 0 }),
    ...(flap === 'full' && { finalStage: last, landingStage: last }),
  };
  const approach = {
    flapless: {
      baseKt: Math.max(speeds.baseKt, speeds.flaplessKt),
      finalKt: speeds.flaplessKt,
      finalFullFlapKt: speeds.flaplessKt,
    },
    'short-field': { finalFullFlapKt: speeds.shortFieldKt },
    glide: { baseKt: speeds.glideKt },
  } as const;
  return { ...aeroplane, plan, speeds: { ...speeds, ...(approachSpeed && approach[approachSpeed]) } };
};
