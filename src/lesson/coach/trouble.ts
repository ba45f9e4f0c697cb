import { triedForPower } from '../../circuit/checks.ts';
import { mpsFromFpm } from '../../units/conversions.ts';
import type { LegName } from '../names.ts';
import { CLOSED_THROTTLE, FULL_POWER } from '../watch/full-power.ts';
import type { CoachContext, Word } from './context.ts';
import type { Told } from './reminders.ts';

/**
 * What has gone wrong and what is done about it, said once, to somebody reminded as to somebody talked through: it is
 * no danger yet (`safety.ts`), and it must not become one.
 */
const STOP_RANK = 2; // definition: a place in the order of what is said
const PARTIAL_RANK = 6; // definition: a place in the order of what is said
const RADIO_RANK = 45; // definition: a place in the order of what is said
/** A silence that long is noticed. */
const NOBODY_ANSWERS_S = 4; // our choice: a call and no answer

/** Said at once, and once. */
const once = (told: Told, topic: string, text: string, rank: number, afterS: number): Word[] =>
  told(topic) > 0 ? [] : [{ topic, text, rank, afterS }];

/** The take-off was called off and is being stopped. */
export const isAbandoned = ({ m, s }: Pick<CoachContext, 'm' | 's'>): boolean =>
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

const TAKES_OFF_AGAIN = 0.8; // our choice: more is a touch-and-go
const FORGOTTEN_S = 2; // our choice: a hand on its way

/** Rolling with power that neither stops nor goes: said again and again. */
const powerLeftOn = (c: CoachContext): Word[] => {
  const { m, s } = c;
  const rolling = isAbandoned(c) || (s.onGround && m.legs.leg === 'landing-roll');
  if (!rolling || s.throttle < CLOSED_THROTTLE || (!isAbandoned(c) && s.throttle > TAKES_OFF_AGAIN))
    return [];
  return [{ topic: 'power-left-on', text: 'Close the throttle.', rank: STOP_RANK, afterS: FORGOTTEN_S }];
};

/** Below circuit height, where what is left of the power decides what is flown. */
const CLIMBING: ReadonlySet<LegName> = new Set([
  'upwind',
  'turn-to-crosswind',
  'crosswind',
  'turn-to-downwind',
]);
const CLIMB_MPS = mpsFromFpm(50); // estimate: no climb that anybody would call one
const TRIED_S = 8; // estimate: what the hands take for heat, fuel and pump

/**
 * Speed first, and a plan for what is left of the power (ATSB AR-2010-055); heat is the first thing tried (New Zealand
 * Flight Instructor Guide, engine failure after take-off); fuel, pump, and then leaving alone what works: common practice.
 */
const partialPower = (c: CoachContext, told: Told): Word[] => {
  const { s, m, lesson } = c;
  if (!isPowerPartial(c)) return [];
  const { aeroplane } = lesson;
  const tried = triedForPower(aeroplane).join(', ');
  const first = `Part of the power is gone: ${aeroplane.speeds.glideKt} knots first; ${tried}; then leave alone what works.`;
  if (told('partial-power') === 0) return once(told, 'partial-power', first, PARTIAL_RANK, 1);
  if (!CLIMBING.has(m.legs.leg)) return [];
  const plan =
    s.verticalSpeedMps > CLIMB_MPS
      ? 'It climbs: a low, gentle circuit, banks of 15 degrees.'
      : 'It does not climb: land ahead, within 30 degrees, while there is a choice.';
  return once(told, 'partial-power-plan', plan, PARTIAL_RANK, TRIED_S);
};

/** In the air with less than the lever asks for. */
const isPowerPartial = ({ s }: CoachContext): boolean => s.powerPartial && !s.onGround;

/** Nobody whose lever is open is asked for what is not there; with only part of the power, for none at all. */
export const canBeGiven = ({ text }: Word, c: CoachContext): boolean => {
  if (c.s.throttle <= FULL_POWER) return true;
  return isPowerPartial(c)
    ? !/\bpower\b/i.test(text)
    : !/\b(?:a little|more) power|power for less sink/i.test(text);
};

/** Fly, the box, 7600, the lights (FAA AIM 4-2-13, 4-3-13, 6-4-2, the last from memory). */
const radioFailure = (c: CoachContext, told: Told): Word[] => {
  const { s, m, lesson } = c;
  if (!s.radioFailed || s.onGround || m.procedures === null) return [];
  const lights =
    lesson.procedures?.radio === 'towered'
      ? 'watch the tower for its light, rock the wings to answer'
      : 'look out more than ever';
  const text = `Nobody answers: fly first; frequency, volume, plug; then 7600, the same circuit, and ${lights}.`;
  return once(told, 'radio-failure', text, RADIO_RANK, NOBODY_ANSWERS_S);
};

export const troubleNow = (c: CoachContext, told: Told): Word[] => [
  ...abandoned(c, told),
  ...powerLeftOn(c),
  ...partialPower(c, told),
  ...radioFailure(c, told),
];
