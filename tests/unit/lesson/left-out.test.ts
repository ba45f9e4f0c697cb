// What was left out beside the flying is named; what was not due, or not looked at, is not held against anybody.
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/lesson/judge/assess.ts';
import { leftOut } from '../../../src/lesson/procedures/left-out.ts';
import { tickItem } from '../../../src/lesson/procedures/watch-checks.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { flyEverything } from '../../support/everything-done.ts';
import { flyWithProcedures } from '../../support/procedures.ts';

const namedIn = (flight: ReturnType<typeof flyEverything>): readonly string[] =>
  leftOut(flight.m, flight.lesson, assess(flight.m, flight.lesson).items);

describe('what was left out', () => {
  it('is named: two items of a check, and a call', () => {
    const flight = flyEverything(
      {
        tick: (id, list) => list !== 'downwind' || (id !== 'fuel' && id !== 'harness'),
        call: (call) => (call === 'final' ? null : 0),
      },
      { start: 'downwind' },
    );
    expect(namedIn(flight)).toEqual([
      'Check downwind, left out: fuel: tank, contents enough to go around; hatches and harnesses secure.',
      'Call “final”: not made.',
    ]);
  });

  it('is nothing where all was done, or where the exercise does not look at it', () => {
    expect(namedIn(flyEverything({}, { start: 'downwind' }))).toEqual([]);
    const nothing = flyWithProcedures({ start: 'downwind' });
    expect(leftOut(nothing.m, nothing.lesson, [])).toEqual([]);
    const [check] = leftOut(nothing.m, nothing.lesson, assess(nothing.m, nothing.lesson).items);
    // What it means to do them stands with those that want doing
    expect(check).toMatch(
      /^Check downwind, left out: brakes: .* \(press them and feel: a tick does not count\); /,
    );
  });

  it('is not held against who joined too late for it', () => {
    // On final below the last call, and just before base
    const late = flyWithProcedures({ start: 'final' });
    const at = late.m.procedures!;
    expect(late.item('lookout-final')).toBeUndefined();
    expect(at.lists.some(({ list }) => list === 'downwind')).toBe(false);
    expect(late.item('checks-downwind')).toBeUndefined();
    expect(late.item('brakes-found')).toBeUndefined();
  });

  it('is not done by a tick where it has to be worked', () => {
    const flight = flyWithProcedures({ start: 'downwind', seconds: 6 });
    const { m, lesson } = flight;
    expect(tickItem(m.procedures!, lesson, newSnapshot(), 'brakes')).toBe('to-be-worked');
  });
});
