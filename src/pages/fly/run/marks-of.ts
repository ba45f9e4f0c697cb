import type { Mark } from '../../../formats/attempt.ts';
import type { Recording } from '../../../session/recording.ts';
import type { PilotEvent } from '../../../simulation/pilot-event.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';

const KINDS: Partial<Record<PilotEvent['kind'], Mark['kind']>> = {
  tick: 'check',
  say: 'call',
  look: 'look',
  subscale: 'note',
  said: 'coach',
};

const WORDS: Partial<Record<PilotEvent['kind'], (value: string) => string>> = {
  look: (value) => (value === 'leg' ? 'looked with the leg' : `looked ${value}°`),
  subscale: (value) => `set ${value} hPa`,
};

/** What was ticked, said and looked at, as an attempt keeps it beside its flight. */
export const marksOf = ({ events }: Recording): Mark[] =>
  events.flatMap(({ step, kind, value }) => {
    const mark = KINDS[kind];
    if (mark === undefined) return [];
    return [{ atS: step / STEP_HZ, kind: mark, text: WORDS[kind]?.(value) ?? value.replaceAll('-', ' ') }];
  });
