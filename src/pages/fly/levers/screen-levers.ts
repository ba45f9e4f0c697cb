import type { Intent, IntentReader } from '../../../input/intent.ts';
import { curved, steadied } from '../../../input/stick-curve.ts';

/** Sliders on the screen: where a lever was dragged to, until it is there. */
const STEPS_TO_GET_THERE = 60;

export interface ScreenLevers extends IntentReader {
  move(lever: 'throttle' | 'trim', to: number): void;
  setFlapStage(stage: number): void;
  /** Where a finger holds the stick: -1..1, + pulled and + to the right; null when it has let go. */
  holdStick(at: { readonly pitch: number; readonly roll: number } | null): void;
}

export const createScreenLevers = (): ScreenLevers => {
  const wanted = { throttle: 0, trim: 0 };
  const left = { throttle: 0, trim: 0 };
  const stick = { pitch: 0, roll: 0 };
  let flapStage: number | null = null;
  return {
    move: (lever, to) => {
      wanted[lever] = to;
      left[lever] = STEPS_TO_GET_THERE;
    },
    setFlapStage: (stage) => {
      flapStage = stage;
    },
    holdStick: (at) => {
      stick.pitch = at === null ? 0 : steadied(stick.pitch, curved(at.pitch));
      stick.roll = at === null ? 0 : steadied(stick.roll, curved(at.roll));
    },
    read: (into: Intent) => {
      if (stick.pitch !== 0 || stick.roll !== 0) {
        into.pitch = stick.pitch;
        into.roll = stick.roll;
        into.analogue = true;
      }
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
