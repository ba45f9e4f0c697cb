// What the command line tells beside the flying (design/headless.md, "More to run without a screen"): what was done,
// the runs as flown, what the coach said, and others in the circuit.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { PrintedResult } from '../../../src/headless/flight.ts';
import { answer } from '../../../src/headless/main.ts';
import type { Procedures } from '../../../src/simulation/procedures.ts';

const folder = mkdtempSync(join(tmpdir(), 'lapwing-beside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const fly = (...args: string[]): PrintedResult => {
  const { out, error } = answer(args, folder);
  expect(error).toBe('');
  return JSON.parse(out) as PrintedResult;
};

/** The demonstration's flight from a leg, with what surrounds the flying. */
const scenarioWith = (start: string, procedures: Partial<Procedures>): string => {
  const { scenario } = fly('--start', start, '--controls', 'none', '--duration', '1');
  const all: Procedures = {
    radio: 'untowered',
    words: 'icao',
    subscaleHpa: 1013,
    traffic: [],
    ...procedures,
  };
  writeFileSync(join(folder, 'scenario.json'), JSON.stringify({ ...scenario, procedures: all }));
  return 'scenario.json';
};

/** Of a track of sixty rows a second: metres along the runway (east and north are from the threshold), height, ground. */
const trackOf = (file: string) => {
  const [head = '', ...rows] = readFileSync(join(folder, file), 'utf8').trimEnd().split('\r\n');
  const names = head.split(',').map((name) => name.trim());
  const at = (cells: string[], name: string) => Number(cells[names.indexOf(name)]);
  return rows.map((row) => {
    const cells = row.split(',');
    return {
      eastM: at(cells, 'east_m'),
      northM: at(cells, 'north_m'),
      heightFt: at(cells, 'height_ft'),
      onGround: at(cells, 'on_ground') === 1,
    };
  });
};
type Row = ReturnType<typeof trackOf>[number];
const apartM = (a: Row, b: Row): number => Math.hypot(a.eastM - b.eastM, a.northM - b.northM);

describe('the runs as flown', () => {
  const result = fly('--track', 'whole.csv', '--rate', '60');
  const rows = trackOf('whole.csv');
  const first = rows[0]!;
  const runs = result.ground_runs;

  it('are those of the track, from standing and to a stop', () => {
    const offAt = rows.findIndex((row) => !row.onGround);
    const over50 = rows.find((row) => row.heightFt >= 50)!;
    expect(Math.abs(runs.take_off_roll_m! - apartM(first, rows[offAt]!))).toBeLessThan(5);
    expect(Math.abs(runs.take_off_to_50ft_m! - apartM(first, over50))).toBeLessThan(3);
    const last = rows.at(-1)!;
    const down50 = [...rows].reverse().find((row) => row.heightFt >= 50)!;
    expect(Math.abs(runs.landing_from_50ft_m! - apartM(down50, last))).toBeLessThan(3);
    expect(runs.take_off_to_50ft_m!).toBeGreaterThan(runs.take_off_roll_m! + 50);
  });

  it('agree with touchdown and stop of the result', () => {
    const [touch] = result.touchdowns;
    const rolledM = result.stop!.past_threshold_m - touch!.past_threshold_m;
    expect(Math.abs(runs.landing_roll_m! - rolledM)).toBeLessThan(2);
  });

  it('are null where there were none', () => {
    const fromFinal = fly('--start', 'final').ground_runs;
    expect([fromFinal.take_off_roll_m, fromFinal.take_off_to_50ft_m]).toEqual([null, null]);
    expect(fromFinal.landing_roll_m).toBeGreaterThan(100);
    const stood = fly('--controls', 'none', '--duration', '2').ground_runs;
    expect(Object.values(stood)).toEqual([null, null, null, null]);
    const refused = fly('--wind', '310/60');
    expect(refused.outcome).toBe('refused');
    expect(Object.values(refused.ground_runs)).toEqual([null, null, null, null]);
  });
});

describe('the coach', () => {
  it('says nothing unless asked', () => {
    expect(fly('--start', 'final').said).toEqual([]);
  });

  it('talks a flight through, and changes nothing of it', () => {
    const silent = fly('--start', 'downwind', '--track', 'silent.csv');
    const talked = fly('--start', 'downwind', '--coach', 'talked', '--track', 'talked.csv');
    expect(talked.said.length).toBeGreaterThan(4);
    expect(new Set(talked.said.map(({ layer }) => layer))).toEqual(new Set(['lesson']));
    expect(talked.said.some(({ text }) => text.includes('to base now'))).toBe(true);
    const times = talked.said.map(({ at_s }) => at_s);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect({ ...talked, said: [] }).toEqual(silent);
    expect(readFileSync(join(folder, 'talked.csv'))).toEqual(readFileSync(join(folder, 'silent.csv')));
  });

  it('reminds hands that follow a file too', () => {
    const dive = hold('dive.csv', 'time_s,elevator,throttle\n0,0.1,0\n');
    const args = ['--start', 'downwind', '--controls', dive, '--duration', '20'];
    expect(fly(...args).said).toEqual([]);
    expect(fly(...args, '--coach', 'reminded').said.length).toBeGreaterThan(0);
  });

  it('is one of three', () => {
    expect(answer(['--coach', 'loud'], folder)).toMatchObject({
      code: 2,
      error: '--coach must be one of talked, reminded, silent, was loud\n',
    });
  });
});

const hold = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return name;
};

describe('what was done', () => {
  it('is every check, call and look of the model pilot, with or without a tower', () => {
    const { done, scenario } = fly('--radio', 'towered', '--start', 'downwind');
    expect(scenario.procedures).toMatchObject({ radio: 'towered', traffic: [] });
    expect(done.every(({ by }) => by === 'model')).toBe(true);
    const ids = (what: string) => done.filter((each) => each.what === what).map(({ id }) => id);
    expect(ids('check').filter((id) => id.startsWith('downwind/'))).toHaveLength(8);
    expect(ids('call')).toEqual(['downwind', 'back', 'final', 'back', 'vacated']);
    expect(ids('look')).toHaveLength(6);
    expect(answer(['--radio', 'loud'], folder).error).toBe(
      '--radio must be one of none, untowered, towered, was loud\n',
    );
  });

  it('is nothing where nothing is checked', () => {
    expect(fly('--start', 'final').done).toEqual([]);
  });

  it('names check, item and who flew, in order', () => {
    const file = scenarioWith('downwind', {});
    // The carburettor heat is worked for the check, by whoever moves it
    const hands = hold('heat.csv', 'time_s,carb_heat\n0,0\n4,1\n20,0\n');
    const { done } = fly('--scenario', file, '--controls', hands, '--duration', '30');
    const heat = done.find(({ id }) => id.startsWith('downwind/') && id.includes('heat'));
    expect(heat).toMatchObject({ what: 'check', by: 'pilot' });
    expect(heat!.at_s).toBeGreaterThan(4);
    expect(done.map(({ at_s }) => at_s)).toEqual(done.map(({ at_s }) => at_s).sort((a, b) => a - b));
    const byModel = fly('--scenario', file).done;
    expect(byModel.length).toBeGreaterThan(0);
    expect(byModel.filter(({ by }) => by !== 'model')).toEqual([]);
  });
});

describe('others in the circuit', () => {
  it('fly, are told to the lesson, and are judged by their spacing', () => {
    const alone = fly('--scenario', scenarioWith('downwind', {}));
    const traffic = [{ from: 'base' as const, vacatesS: 20 }];
    const behind = fly('--scenario', scenarioWith('downwind', { traffic }));
    expect(alone.items.some(({ id }) => id === 'spacing-ahead')).toBe(false);
    const spacing = behind.items.find(({ id }) => id === 'spacing-ahead');
    expect(spacing?.value).toBeGreaterThan(400);
    expect(behind.touchdowns).toEqual(alone.touchdowns);
  });
});
