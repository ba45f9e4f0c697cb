// Checks, calls, lookout and traffic, flown by the model pilot with somebody beside who ticks, calls and looks.
// Order of the pre-landing check and of the go-around, place and words of the calls: tests/reference/circuit.ts,
// with their sources; limits: common practice, as the table of limits says.
import { describe, expect, it } from 'vitest';
import { aeroplaneNamed } from '../../../src/catalogue.ts';
import { callPlace, nextCall } from '../../../src/lesson/procedures/call-places.ts';
import { itemsOf } from '../../../src/lesson/procedures/check-lists.ts';
import { chooseProcedures } from '../../../src/lesson/procedures/choose.ts';
import { couldBeSeen } from '../../../src/lesson/procedures/could-be-seen.ts';
import { lookoutBefore } from '../../../src/lesson/procedures/lookout.ts';
import { openAnswer } from '../../../src/lesson/procedures/watch-calls.ts';
import { currentList } from '../../../src/lesson/procedures/watch-checks.ts';
import { trafficValue } from '../../../src/lesson/procedures/watch-traffic.ts';
import { callWordings, IF_IT_STOPS, shuffled } from '../../../src/lesson/procedures/wordings.ts';
import { createLessonFold } from '../../../src/lesson/watch/lesson-fold.ts';
import { createPlayback } from '../../../src/session/playback.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import type { Fold } from '../../../src/session/source.ts';
import { newSnapshot } from '../../../src/simulation/snapshot.ts';
import { radFromDeg } from '../../../src/units/conversions.ts';
import { type Beside, flyWithProcedures } from '../../support/procedures.ts';

/** Ticks the next item whenever a check is open. */
const tickAll = ({ m, tell }: Beside): void => {
  if (m.procedures && currentList(m.procedures)) tell('tick', '');
};

/** Makes each call where it belongs and reads every answer back. */
const callAll =
  (choice = 0) =>
  ({ m, lesson, tell }: Beside): void => {
    const p = m.procedures;
    if (!p) return;
    if (openAnswer(p)) tell('say', `back/${choice}`);
    const call = nextCall(m, lesson);
    const said = p.calls.some((f) => f.call === call && f.saidS !== null);
    if (!said && callPlace(call, m, lesson) === 'here') tell('say', `${call}/${choice}`);
  };

/** Brakes tried and heat hot for eleven seconds, early on downwind. */
const worksThem = (s: { timeS: number }, controls: { brake: number; carbHeat: number }): void => {
  if (s.timeS > 4 && s.timeS < 6) controls.brake = 1;
  if (s.timeS > 6 && s.timeS < 18) controls.carbHeat = 1;
};

describe('the checks', () => {
  it('follow the equipment of the aeroplane', () => {
    const ids = (name: string) => itemsOf('downwind', aeroplaneNamed(name)).map(({ id }) => id);
    // BUMPFFITCHH in its order; gear, propeller and pump only where there are any
    expect(ids('sandpiper')).toEqual([
      'brakes',
      'mixture',
      'fuel',
      'altimeter',
      'engine',
      'heat',
      'harness',
      'flap',
    ]);
    expect(ids('whimbrel')).toContain('gear');
    expect(ids('whimbrel')).toContain('propeller');
  });

  it('of the go-around stand in the order power, attitude, configuration (FAA-H-8083-3C ch. 9)', () => {
    const ids = itemsOf('go-around', aeroplaneNamed('whimbrel')).map(({ id }) => id);
    expect(ids.indexOf('power')).toBeLessThan(ids.indexOf('attitude'));
    expect(ids.indexOf('attitude')).toBeLessThan(ids.indexOf('flap'));
    // Gear only once climbing, the rest of the flap last
    expect(ids.indexOf('flap')).toBeLessThan(ids.indexOf('gear'));
    expect(ids.indexOf('gear')).toBeLessThan(ids.indexOf('flap-up'));
  });

  it('are done by working brakes and heat and reading the rest', () => {
    const flight = flyWithProcedures({ start: 'downwind', beside: tickAll, hands: worksThem });
    expect(flight.item('checks-downwind')?.value).toBe(100);
    expect(flight.item('checks-downwind')?.band).toBe('green');
    const list = flight.m.procedures?.lists.find((each) => each.list === 'downwind');
    expect(list?.items.find(({ id }) => id === 'brakes')?.note).toBe('pressure firm');
    const fell = Number(/(\d+)$/.exec(list?.items.find(({ id }) => id === 'heat')?.note ?? '')?.[1]);
    // A fall of 50 to 150 rpm is usual (common practice); the carburettor heat of the design sheet costs power
    expect(fell).toBeGreaterThanOrEqual(30);
    expect(fell).toBeLessThanOrEqual(200);
  });

  it('cannot be ticked for brakes and heat', () => {
    const flight = flyWithProcedures({ start: 'downwind', beside: tickAll });
    const list = flight.m.procedures?.lists.find((each) => each.list === 'downwind');
    const open = list?.items.filter(({ doneS }) => doneS === null).map(({ id }) => id);
    expect(open).toContain('brakes');
    expect(flight.item('checks-downwind')?.value).toBeLessThan(100);
  });

  it('before take-off end with what one does if the engine stops', () => {
    const before = (choice: number) =>
      flyWithProcedures({
        start: 'line-up',
        seconds: 12,
        beside: ({ s, tell }) => {
          if (s.timeS > 1 && s.timeS < 1.5) tell('say', `if-it-stops/${choice}`);
        },
      }).m.procedures?.lists.find(({ list }) => list === 'before-take-off');
    const item = (choice: number) => before(choice)?.items.find(({ id }) => id === 'if-it-stops');
    expect(item(0)?.doneS).not.toBeNull();
    expect(item(1)?.doneS).toBeNull();
    expect(item(1)?.wrong).toBeGreaterThan(0);
    // Nose down and a field ahead within 30 degrees; no turn back low (New Zealand Flight Instructor Guide)
    expect(IF_IT_STOPS[0]).toMatch(/nose down.*ahead within 30 degrees/);
  });

  it('that nobody does are missed, and no row about the flying says so', () => {
    const flight = flyWithProcedures({ start: 'downwind' });
    expect(flight.item('checks-downwind')?.band).toBe('red');
    expect(flight.item('downwind-height')?.band).toBe('green');
  });

  it('find brakes without pressure when they are tried, and not otherwise', () => {
    const failures = [{ atS: 0, what: 'brakes', amount: 0.5 } as const];
    const tried = flyWithProcedures({ start: 'downwind', failures, beside: tickAll, hands: worksThem });
    expect(tried.item('brakes-found')?.band).toBe('green');
    const list = tried.m.procedures?.lists.find((each) => each.list === 'downwind');
    expect(list?.items.find(({ id }) => id === 'brakes')?.note).toBe('no pressure');
    const untried = flyWithProcedures({ start: 'downwind', failures, seconds: 240 });
    expect(untried.item('brakes-found')?.band).toBe('red');
  });

  it('find a subscale left elsewhere, and a tick does not stand for setting it', () => {
    const left = { start: 'downwind', procedures: { subscaleHpa: 1007 } } as const;
    const ticked = flyWithProcedures({ ...left, beside: tickAll });
    expect(ticked.item('subscale')?.value).toBe(-6);
    expect(ticked.item('subscale')?.band).toBe('red');
    const list = ticked.m.procedures?.lists.find((each) => each.list === 'downwind');
    expect(list?.items.find(({ id }) => id === 'altimeter')?.wrong).toBeGreaterThan(0);
    const set = flyWithProcedures({
      ...left,
      beside: ({ s, tell }) => {
        if (s.timeS > 5 && s.timeS < 6) tell('subscale', '1013');
      },
    });
    expect(set.item('subscale')?.band).toBe('green');
    const done = set.m.procedures?.lists.find((each) => each.list === 'downwind');
    expect(done?.items.find(({ id }) => id === 'altimeter')?.doneS).not.toBeNull();
  });

  it('go on past an item that was ticked while its control stood wrong, and come back to it', () => {
    // At line-up the electric pump is still off; nobody switches it on
    const ticks = flyWithProcedures({
      start: 'line-up',
      aeroplane: 'dotterel',
      seconds: 5,
      hands: (_, controls) => {
        controls.throttle = 0;
        controls.pump = 0;
      },
      beside: tickAll,
    });
    const list = ticks.m.procedures?.lists.find((each) => each.list === 'before-take-off');
    const item = (id: string) => list?.items.find((each) => each.id === id);
    expect(item('pump')).toMatchObject({ doneS: null });
    expect(item('pump')?.wrong).toBeGreaterThan(0);
    expect(item('harness')?.doneS).not.toBeNull();
  });

  it('record height and heading lost while heads were in', () => {
    const steady = flyWithProcedures({ start: 'downwind', beside: tickAll, hands: worksThem });
    expect(steady.item('heads-in-height')?.band).toBe('green');
    const sinking = flyWithProcedures({
      start: 'downwind',
      beside: ({ m, s, tell }) => {
        if (Math.floor(s.timeS) % 3 === 0) tickAll({ m, s, tell } as Beside);
      },
      hands: (s, controls) => {
        if (s.timeS < 25) controls.elevator = Math.min(controls.elevator, -0.1);
      },
    });
    expect(sinking.item('heads-in-height')?.value).toBeGreaterThan(
      steady.item('heads-in-height')?.value ?? 0,
    );
  });
});

describe('the calls', () => {
  it('made at their place in the right words are green', () => {
    const flight = flyWithProcedures({ start: 'downwind', beside: callAll() });
    expect(flight.item('calls')?.value).toBe(100);
    expect(flight.item('read-back')).toBeUndefined();
    expect(flight.item('clearance')).toBeUndefined();
  });

  it('in the wrong words, or not made, are red', () => {
    expect(flyWithProcedures({ start: 'downwind', beside: callAll(1) }).item('calls')?.band).toBe('red');
    expect(flyWithProcedures({ start: 'downwind' }).item('calls')?.band).toBe('red');
  });

  it('to a tower are answered, and what it says is read back and obeyed', () => {
    const towered = { start: 'downwind', procedures: { radio: 'towered' } } as const;
    const flight = flyWithProcedures({ ...towered, beside: callAll() });
    const answers = flight.m.procedures?.answers.map(({ answer }) => answer);
    expect(answers).toEqual(['report-final', 'cleared-land']);
    expect(flight.item('read-back')?.band).toBe('green');
    expect(flight.item('clearance')?.value).toBe(0);
    const roger = flyWithProcedures({
      ...towered,
      beside: (b) => {
        const p = b.m.procedures;
        if (p && openAnswer(p)) b.tell('say', 'back/1');
        else callAll()(b);
      },
    });
    expect(roger.item('read-back')?.band).toBe('red');
  });

  it('left out at a towered runway make a go-around due, and a landing without a clearance is told', () => {
    const flight = flyWithProcedures({ start: 'downwind', procedures: { radio: 'towered' } });
    expect(flight.m.dues.map(({ why }) => why)).toContain('no clearance to land');
    expect(flight.item('clearance')?.value).toBe(1);
  });

  it('with the radio gone are not asked for; the tower shows green flashes, then a green light (AIM 4-3-13)', () => {
    const flight = flyWithProcedures({
      start: 'downwind',
      procedures: { radio: 'towered' },
      failures: [{ atS: 0, what: 'radio', amount: 0.5 }],
    });
    expect(flight.m.procedures?.answers.map(({ answer }) => answer)).toEqual([
      'green-flashes',
      'green-light',
    ]);
    expect(flight.item('calls')).toBeUndefined();
    expect(flight.item('clearance')?.value).toBe(0);
  });

  it('with the radio gone and the runway taken the tower shows a steady red light, and a go-around is due', () => {
    const flight = flyWithProcedures({
      start: 'final',
      procedures: { radio: 'towered' },
      failures: [{ atS: 0, what: 'radio', amount: 0.5 }],
      beside: ({ lesson, tell }) => {
        const { sinHeading, cosHeading } = lesson.runway;
        const there = { eastM: 300 * sinHeading, northM: 300 * cosHeading, onGround: true };
        tell('traffic', trafficValue(0, { ...newSnapshot(), ...there }));
      },
    });
    expect(flight.m.procedures?.answers[0]?.answer).toBe('red-light');
    expect(flight.m.dues.map(({ why }) => why)).toContain('no clearance to land');
    expect(flight.item('read-back')).toBeUndefined();
  });

  it('give the instruction of the task in the words of the tower', () => {
    const flight = flyWithProcedures({
      start: 'downwind',
      procedures: { radio: 'towered' },
      task: { technique: 'normal', instructions: [{ what: 'extend', circuit: 1, byM: 800 }] },
      beside: callAll(),
    });
    expect(flight.m.procedures?.answers.map(({ answer }) => answer)).toContain('extend');
  });

  it('without a tower begin with the aerodrome, in the FAA words end with it too (AIM 4-1-9)', () => {
    const words = (procedures: Parameters<typeof flyWithProcedures>[0]['procedures']) => {
      const { lesson } = flyWithProcedures({
        start: 'downwind',
        seconds: 1,
        ...(procedures && { procedures }),
      });
      return callWordings('downwind', lesson);
    };
    const [faa] = words({ words: 'faa' });
    expect(faa).toMatch(/^Curlew Sands traffic, .*, Curlew Sands$/);
    const [icao] = words({ words: 'icao' });
    expect(icao).toMatch(/^Curlew Sands traffic, /);
    // Left-hand circuits need not be said (CAP 413)
    expect(icao).not.toContain('left-hand');
    // "Take-off" is only for the clearance (GEN 24)
    expect(words({ radio: 'towered' })[0]).not.toMatch(/take-off/);
    for (const wording of words({ words: 'faa' }).slice(0, 1)) expect(wording).not.toMatch(/please advise/);
  });

  it('to a tower keep "take-off" for its clearance in the ICAO words; the FAA words do not call that wrong', () => {
    const ready = (words: 'icao' | 'faa') =>
      callWordings(
        'ready',
        flyWithProcedures({ start: 'line-up', seconds: 1, procedures: { radio: 'towered', words } }).lesson,
      );
    // "Take-off" is said only in the clearance or its cancellation (flying-school radio handbook, quoted)
    expect(ready('icao')[0]).toMatch(/ready for departure, runway 22$/);
    expect(
      ready('icao')
        .slice(1)
        .some((text) => /take-off/.test(text)),
    ).toBe(true);
    expect(
      ready('faa')
        .slice(1)
        .some((text) => /take-off/.test(text)),
    ).toBe(false);
  });

  it('are offered in the same order for the same flight', () => {
    const { lesson } = flyWithProcedures({ start: 'final', seconds: 1 });
    expect(shuffled(lesson, 'final/1')).toEqual(shuffled(lesson, 'final/1'));
    expect([...shuffled(lesson, 'final/1')].sort()).toEqual([0, 1, 2]);
  });
});

describe('the lookout', () => {
  const turn = { onto: 'base', fromS: 100 } as const;
  const looks = (...at: readonly (readonly [number, number])[]) => at.map(([atS, deg]) => ({ atS, deg }));

  it('before a left turn goes right, ahead, left', () => {
    const whole = lookoutBefore(looks([90, 90], [94, 0], [97, -45]), turn, -1);
    expect(whole).toEqual({ away: true, ahead: true, into: true, endsInto: true });
    const mirrored = lookoutBefore(looks([90, -90], [94, 0], [97, 45]), turn, 1);
    expect(mirrored).toEqual(whole);
  });

  it('ends in the direction of the turn', () => {
    const back = lookoutBefore(looks([90, 90], [94, -45], [97, 0]), turn, -1);
    expect(back.endsInto).toBe(false);
    expect(back.into).toBe(true);
  });

  it('before base takes in long final, between ahead and abeam; a look at the runway behind does not', () => {
    expect(lookoutBefore(looks([90, 90], [94, 0], [97, -135]), turn, -1).into).toBe(false);
    expect(lookoutBefore(looks([90, 90], [94, 0], [97, -135]), { ...turn, onto: 'final' }, -1).into).toBe(
      true,
    );
  });

  it('long before the turn is forgotten', () => {
    expect(lookoutBefore(looks([40, 90], [42, 0], [44, -45]), turn, -1).away).toBe(false);
  });

  it('is found in a flight', () => {
    const beside = ({ m, s, tell }: Beside) => {
      if (m.legs.leg !== 'downwind' && m.legs.leg !== 'base') return;
      const to = [90, 0, -45][Math.floor(s.timeS / 2) % 3] as number;
      tell('look', String(to));
    };
    const flight = flyWithProcedures({ start: 'downwind', beside });
    expect(flight.item('lookout-base')?.value).toBeGreaterThanOrEqual(75);
    expect(flyWithProcedures({ start: 'downwind' }).item('lookout-base')?.band).toBe('red');
  });
});

describe('the others in the circuit', () => {
  const standing = (alongM: number) => ({ ...newSnapshot(), eastM: 0, northM: 0, onGround: true, alongM });

  it('on the runway make a go-around due', () => {
    const flight = flyWithProcedures({
      start: 'final',
      beside: ({ lesson, tell }) => {
        const { sinHeading, cosHeading } = lesson.runway;
        const other = { ...standing(0), eastM: 300 * sinHeading, northM: 300 * cosHeading };
        tell('traffic', trafficValue(0, other));
      },
    });
    expect(flight.m.dues.map(({ why }) => why)).toContain('the runway is occupied');
  });

  it('that have left it do not', () => {
    const flight = flyWithProcedures({
      start: 'final',
      beside: ({ lesson, s, tell }) => {
        if (s.timeS > 10) return;
        const { sinHeading, cosHeading } = lesson.runway;
        tell(
          'traffic',
          trafficValue(0, { ...standing(0), eastM: 300 * sinHeading, northM: 300 * cosHeading }),
        );
      },
    });
    expect(flight.m.dues.map(({ why }) => why)).not.toContain('the runway is occupied');
  });

  it('in the air keep their distance, or it is told', () => {
    const beside =
      (behindM: number) =>
      ({ s, tell }: Beside) => {
        const other = { ...newSnapshot(), onGround: false, heightM: s.heightM };
        other.eastM = s.eastM + behindM * Math.sin(s.trackRadT);
        other.northM = s.northM + behindM * Math.cos(s.trackRadT);
        tell('traffic', trafficValue(0, other));
      };
    const near = flyWithProcedures({ start: 'downwind', beside: beside(250), seconds: 60 });
    expect(near.item('spacing-ahead')?.band).toBe('red');
    const far = flyWithProcedures({ start: 'downwind', beside: beside(1500), seconds: 60 });
    expect(far.item('spacing-ahead')?.band).toBe('green');
  });

  it('are seen ahead and near, not far away, not behind the tail, not behind the own wing', () => {
    const own = { ...newSnapshot(), eyeHeightM: 300, headingRadT: 0 };
    const at = (bearingDeg: number, metres: number, aboveM = 0) => ({
      eastM: metres * Math.sin(radFromDeg(bearingDeg)),
      northM: metres * Math.cos(radFromDeg(bearingDeg)),
      heightM: 300 + aboveM,
    });
    expect(couldBeSeen(own, at(0, 1500), 'high')).toBe(true);
    // Two nautical miles (common practice)
    expect(couldBeSeen(own, at(0, 4500), 'high')).toBe(false);
    expect(couldBeSeen(own, at(180, 800), 'high')).toBe(false);
    // A high wing hides what is above it to the side, a low wing what is below it
    expect(couldBeSeen(own, at(90, 1000, 400), 'high')).toBe(false);
    expect(couldBeSeen(own, at(90, 1000, 400), 'low')).toBe(true);
    expect(couldBeSeen(own, at(90, 1000, -400), 'low')).toBe(false);
    expect(couldBeSeen(own, at(90, 1000, -400), 'high')).toBe(true);
    // Banked towards it, the high wing's down side opens nothing: the wing comes down over what lies level
    const banked = { ...own, bankRad: radFromDeg(30) };
    expect(couldBeSeen(banked, at(90, 1000, 0), 'high')).toBe(false);
    expect(couldBeSeen(banked, at(-90, 1000, 0), 'high')).toBe(true);
  });
});

describe('what is chosen by seed', () => {
  const choice = { radio: 'towered', words: 'icao', others: 2, surprises: true } as const;
  it('is the same for the same seed, and without surprises nothing waits behind a check', () => {
    for (let seed = 1; seed < 20; seed += 1) {
      expect(chooseProcedures(choice, seed, 1013, 'downwind')).toEqual(
        chooseProcedures(choice, seed, 1013, 'downwind'),
      );
      const plain = chooseProcedures({ ...choice, surprises: false }, seed, 1013, 'downwind');
      expect(plain.procedures.subscaleHpa).toBe(1013);
      expect(plain.failures).toEqual([]);
    }
    const all = Array.from({ length: 40 }, (_, seed) => chooseProcedures(choice, seed, 1013, 'downwind'));
    expect(all.some(({ failures }) => failures.length > 0)).toBe(true);
    expect(all.some(({ procedures }) => procedures.subscaleHpa !== 1013)).toBe(true);
    expect(all.every(({ procedures }) => procedures.traffic.length === 2)).toBe(true);
  });
});

describe('the recording', () => {
  it('keeps what was done beside the controls, and a playback remembers the same', () => {
    const flight = flyWithProcedures({
      start: 'downwind',
      procedures: { radio: 'towered' },
      beside: (b) => {
        tickAll(b);
        callAll()(b);
        if (b.s.step % 240 === 0) b.tell('look', '-90');
      },
      hands: worksThem,
    });
    const again = createSession([
      {
        scenario: flight.scenario,
        source: createPlayback(flight.recording),
        folds: [createLessonFold(flight.lesson) as Fold<unknown>],
      },
    ]);
    while (again.step < flight.recording.steps) tick(again);
    expect(again.aircraft[0]?.foldMemories[0]).toEqual(flight.m);
    expect(again.aircraft[0]?.recorder.recording.events).toEqual(flight.recording.events);
  });
});
