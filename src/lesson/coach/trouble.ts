import type { CoachContext, Word } from './context.ts';
import type { Told } from './reminders.ts';

/**
 * What has gone wrong and what is done about it, said once, to somebody reminded as to somebody talked through: it is
 * no danger yet (`safety.ts`), and it must not become one.
 */
const STOP_RANK = 2; // definition: a place in the order of what is said

/** Said at once, and once. */
const once = (told: Told, topic: string, text: string, rank: number, afterS: number): Word[] =>
  told(topic) > 0 ? [] : [{ topic, text, rank, afterS }];

/** The take-off was called off and is being stopped. */
export const isAbandoned = ({ m, s }: CoachContext): boolean =>
  s.onGround && m.legs.leg === 'take-off-roll' && m.said.some(({ what }) => what === 'stop');

/** Idle, straight, all the braking that holds (FAA-H-8083-3C ch. 6, rejected take-off). */
const abandoned = (c: CoachContext, told: Told): Word[] =>
  isAbandoned(c)
    ? once(
        told,
        'abandoned',
        'Throttle closed, straight with the feet, brakes hard; ease them where a wheel locks.',
        STOP_RANK,
        0,
      )
    : [];

export const troubleNow = (c: CoachContext, told: Told): Word[] => abandoned(c, told);
