import { STEP_HZ } from '../simulation/scenario.ts';
import { type Flight, lessonMemory, ownAircraft } from './flight.ts';

/** Something done beside the controls, as the result file has it. */
export interface Done {
  readonly at_s: number;
  readonly what: 'check' | 'call' | 'look';
  /** `downwind/brakes` of a check, the name of a call (`back` for a read-back), degrees right of the nose of a look. */
  readonly id: string;
  readonly by: 'pilot' | 'model';
}

/** What was checked, called and looked at, in order. `by`: who flew. */
export const doneOf = (flight: Flight, by: Done['by']): readonly Done[] => {
  const p = lessonMemory(flight).procedures;
  if (p === null) return [];
  const done = (what: Done['what']) => (atS: number | null, id: string) =>
    atS === null ? [] : [{ at_s: toMilliseconds(atS), what, id, by }];
  const [check, call, look] = [done('check'), done('call'), done('look')];
  return [
    ...p.lists.flatMap(({ list, items }) => items.flatMap(({ id, doneS }) => check(doneS, `${list}/${id}`))),
    ...p.calls.flatMap(({ call: id, saidS }) => call(saidS, id)),
    ...p.answers.flatMap(({ readS }) => call(readS, 'back')),
    ...p.looks.flatMap(({ atS, deg }) => look(atS, String(deg))),
  ].sort((a, b) => a.at_s - b.at_s);
};

/** A sentence of the coach, as the result file has it. */
export interface Said {
  readonly at_s: number;
  readonly layer: 'safety' | 'lesson';
  readonly text: string;
}

/** What the coach has said, in order. */
export const saidOf = (flight: Flight): readonly Said[] =>
  ownAircraft(flight)
    .recorder.recording.events.filter(({ kind }) => kind === 'said' || kind === 'warned')
    .map(({ step, kind, value }) => ({
      at_s: toMilliseconds(step / STEP_HZ),
      layer: kind === 'warned' ? 'safety' : 'lesson',
      text: value,
    }));

const toMilliseconds = (s: number): number => Math.round(s * 1000) / 1000;
