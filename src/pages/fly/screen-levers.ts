import type { Intent, IntentReader } from '../../input/intent.ts';

/** Sliders on the screen: where a lever was dragged to, until it is there. */
const STEPS_TO_GET_THERE = 60;

export interface ScreenLevers extends IntentReader {
  move(lever: 'throttle' | 'trim', to: number): void;
  setFlapStage(stage: number): void;
}

export const createScreenLevers = (): ScreenLevers => {
  const wanted = { throttle: 0, trim: 0 };
  const left = { throttle: 0, trim: 0 };
  let flapStage: number | null = null;
  return {
    move: (lever, to) => {
      wanted[lever] = to;
      left[lever] = STEPS_TO_GET_THERE;
    },
    setFlapStage: (stage) => {
      flapStage = stage;
    },
    read: (into: Intent) => {
      if (left.throttle > 0) into.throttleTo = wanted.throttle;
      if (left.trim > 0) into.trimTo = wanted.trim;
      left.throttle -= left.throttle > 0 ? 1 : 0;
      left.trim -= left.trim > 0 ? 1 : 0;
      if (into.power !== 0) left.throttle = 0;
      if (into.trim !== 0) left.trim = 0;
      if (flapStage !== null) into.flapTo = flapStage;
      flapStage = null;
    },
  };
};
