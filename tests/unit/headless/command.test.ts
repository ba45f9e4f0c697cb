// The command line is a contract (design/headless.md): options, columns, files, exit codes.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { recordingText } from '../../../src/formats/recording-json.ts';
import type { Result } from '../../../src/formats/result.ts';
import { callersFolder } from '../../../src/headless/files.ts';
import { answer } from '../../../src/headless/main.ts';
import { createScript } from '../../../src/session/script.ts';
import { createSession, tick } from '../../../src/session/session.ts';
import { aerodromeJson } from '../../support/aerodromes.ts';
import { aeroplaneJson } from '../../support/aeroplanes.ts';

const folder = mkdtempSync(join(tmpdir(), 'lapwing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: string[]) => answer(args, folder);
const hold = (name: string, content: unknown): string => {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
};
const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
const rowsOf = (name: string): string[][] =>
  read(name)
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));

const AIR = { east_m: -3000, north_m: 0, height_ft: 1000, heading_deg: 40, ias_kt: 80, flight_path_deg: 0 };

/** The columns as the contract lists them. */
const COLUMNS =
  'time_s, leg, east_m, north_m, height_ft, altitude_ft, ias_kt, tas_kt, groundspeed_kt, heading_deg, track_deg, pitch_deg, bank_deg, alpha_deg, vertical_speed_fpm, load_factor_g, rpm, throttle, flap_deg, elevator, aileron, rudder, trim, brake, wind_from_deg, wind_kt, slope_lights, slope_angle_deg, centreline_m, on_ground, sideslip_deg, held_pressure, flap_stage, gear, carb_heat'.split(
    ', ',
  );
const KEYS =
  'model_version scenario outcome why flight_s legs turns gates go_arounds touchdowns stop ran_off items safety causes done ground_runs said'.split(
    ' ',
  );

describe('a flight without a screen', () => {
  it('writes the columns in their order, CRLF, at the rate asked for', () => {
    const start = hold('air.json', AIR);
    expect(
      run(
        '--controls',
        'none',
        '--start',
        start,
        '--trimmed',
        '--duration',
        '5',
        '--track',
        't.csv',
        '--rate',
        '4',
      ).code,
    ).toBe(0);
    const rows = rowsOf('t.csv');
    expect(rows[0]).toEqual(COLUMNS);
    expect(rows.slice(1).map((row) => Number(row[0]))).toEqual(Array.from({ length: 21 }, (_, i) => i / 4));
    expect(
      read('t.csv')
        .split('\n')
        .slice(0, -1)
        .every((line) => line.endsWith('\r')),
    ).toBe(true);
    for (const row of rows) expect(row).toHaveLength(COLUMNS.length);
  });

  it('begins in the state asked for and, trimmed, stays there hands off', () => {
    const start = hold('air.json', AIR);
    run(
      '--controls',
      'none',
      '--start',
      start,
      '--trimmed',
      '--duration',
      '30',
      '--track',
      't.csv',
      '--rate',
      '1',
    );
    const rows = rowsOf('t.csv').slice(1);
    const column = (row: string[] | undefined, name: string) => Number(row?.[COLUMNS.indexOf(name)]);
    for (const row of [rows[0], rows.at(-1)]) {
      expect(Math.abs(column(row, 'ias_kt') - 80)).toBeLessThan(0.5);
      expect(Math.abs(column(row, 'height_ft') - 1000)).toBeLessThan(10);
      expect(column(row, 'elevator')).toBe(0);
    }
    expect(column(rows[0], 'heading_deg')).toBeCloseTo(40, 1);
    expect(rows[0]?.[COLUMNS.indexOf('wind_from_deg')]).toBe('');
    expect(rows[0]?.[COLUMNS.indexOf('wind_kt')]).toBe('0.00');
  });

  it('has every key of the result, whatever was flown', () => {
    const { out } = run('--controls', 'none', '--duration', '2');
    const result = JSON.parse(out) as Result;
    expect(Object.keys(result)).toEqual(KEYS);
    expect(result.outcome).toBe('time-up');
    expect(result.flight_s).toBe(2);
    expect(result.stop).toBeNull();
    expect(result.legs[0]?.leg).toBe('line-up');
  });

  it('repeats a flight to the byte from its own control columns', () => {
    const start = hold('air.json', { ...AIR, bank_deg: 20 });
    const wind = ['--wind', '200/15g25', '--turbulence', 'moderate', '--seed', '5'];
    const hands = hold(
      'hands.csv',
      'time_s,d_elevator,aileron,throttle,flap_stage\n0,0,0,0.6,0\n2,-0.05,-0.1,0.6,1\n4.2,0.1,0.05,0.9,1\n7,0,0,0.3333,2\n',
    );
    const once = ['--start', start, ...wind, '--duration', '12', '--rate', '60'];
    expect(run(...once, '--controls', hands, '--track', 'one.csv').error).toBe('');
    const rows = rowsOf('one.csv');
    const kept = [
      'time_s',
      'elevator',
      'aileron',
      'rudder',
      'trim',
      'throttle',
      'brake',
      'flap_stage',
      'gear',
      'carb_heat',
    ];
    const at = kept.map((name) => COLUMNS.indexOf(name));
    hold('again.csv', rows.map((row) => at.map((i) => row[i]).join(',')).join('\r\n'));
    expect(run(...once, '--controls', 'again.csv', '--track', 'two.csv').error).toBe('');
    expect(read('two.csv')).toBe(read('one.csv'));
    expect(rows.length).toBeGreaterThan(100);
  });

  it('repeats the model pilot to the byte, hands off the pilot', () => {
    const flight = ['--start', 'final', '--wind', '060/12g20', '--turbulence', 'light', '--rate', '60'];
    expect(run(...flight, '--track', 'flown.csv').error).toBe('');
    const rows = rowsOf('flown.csv');
    const kept = [
      'time_s',
      'elevator',
      'aileron',
      'rudder',
      'trim',
      'throttle',
      'brake',
      'flap_stage',
      'gear',
      'carb_heat',
    ];
    const at = kept.map((name) => COLUMNS.indexOf(name));
    hold('copied.csv', rows.map((row) => at.map((i) => row[i]).join(',')).join('\r\n'));
    expect(run(...flight, '--controls', 'copied.csv', '--track', 'repeated.csv').error).toBe('');
    expect(read('repeated.csv')).toBe(read('flown.csv'));
  });

  it('flies the same flight from the scenario of its result', () => {
    const start = hold('air.json', AIR);
    const common = ['--controls', 'none', '--duration', '5'];
    const first = run(
      ...common,
      '--start',
      start,
      '--wind',
      '200/15g25',
      '--turbulence',
      'light',
      '--seed',
      '9',
    );
    hold('result.json', first.out);
    hold('scenario.json', (JSON.parse(first.out) as Result).scenario);
    expect(run(...common, '--scenario', 'scenario.json').out).toBe(first.out);
    expect(run(...common, '--scenario', 'result.json').out).toBe(first.out);
  });

  it('flies several seeds and sums them up', () => {
    const args = [
      '--controls',
      'none',
      '--start',
      hold('air.json', AIR),
      '--duration',
      '2',
      '--turbulence',
      'light',
    ];
    const { out } = run(...args, '--seed', '3', '--repeat', '2', '--track', 'many.csv', '--gpx', 'many.gpx');
    const { summary, flights } = JSON.parse(out) as {
      summary: { n: number; outcomes: object };
      flights: Result[];
    };
    expect(summary.n).toBe(2);
    expect(summary.outcomes).toEqual({ 'time-up': 2 });
    expect(flights.map((f) => f.scenario.seed)).toEqual([3, 4]);
    expect(read('many-3.csv')).not.toBe(read('many-4.csv'));
    expect(existsSync(join(folder, 'many-3.gpx'))).toBe(true);
    expect(run(...args, '--seed', '4', '--track', 'alone.csv').code).toBe(0);
    expect(read('alone.csv')).toBe(read('many-4.csv'));
  });

  it('starts on every leg, and the leg is found from where the aeroplane is', () => {
    for (const leg of ['upwind', 'crosswind', 'downwind', 'base', 'final']) {
      const result = JSON.parse(
        run('--controls', 'none', '--start', leg, '--trimmed', '--duration', '1').out,
      ) as Result;
      expect(result.legs[0]?.leg).toBe(leg);
    }
  });

  it('plays a recording again and says whether anything differs', () => {
    const scenario = (
      JSON.parse(run('--controls', 'none', '--start', 'final', '--duration', '0').out) as Result
    ).scenario;
    const session = createSession([{ scenario, source: createScript([]), folds: [] }]);
    for (let i = 0; i < 900; i += 1) tick(session);
    const { recording } = session.aircraft[0]!.recorder;
    expect(run('--play', hold('flight.json', recordingText(recording))).out).toBe(
      'no difference in 900 steps\n',
    );
    recording.keyframes[1]!.state[0] = 1;
    expect(run('--play', hold('other.json', recordingText(recording))).out).toMatch(
      /^step 600, eastM: recorded 1, flown /,
    );
  });

  it('lands with the model pilot and says so', () => {
    const result = JSON.parse(run('--start', 'final').out) as Result;
    expect(result.outcome).toBe('stopped');
    expect(result.stop?.remaining_m).toBeGreaterThan(0);
    expect(result.touchdowns).toHaveLength(1);
    expect(result.legs.map((l) => l.leg)).toEqual(['final', 'hold-off', 'landing-roll', 'stopped']);
  });

  it('runs as a program: builds when needed, answers on stdout, fails on stderr with exit code 2', () => {
    const program = fileURLToPath(new URL('../../../src/headless/run.mjs', import.meta.url));
    const good = spawnSync(process.execPath, [program, '--list', '--json'], {
      encoding: 'utf8',
      cwd: folder,
    });
    expect(good.stderr).toBe('');
    expect(good.status).toBe(0);
    expect(JSON.parse(good.stdout)).toHaveProperty('exercises');
    const bad = spawnSync(process.execPath, [program, '--wind', '370/10'], { encoding: 'utf8', cwd: folder });
    expect([bad.status, bad.stdout]).toEqual([2, '']);
    expect(bad.stderr).toMatch(/^--wind: direction must be 000 to 360, was 370/);
  });

  it('lists what there is', () => {
    const list = JSON.parse(run('--list', '--json').out) as Record<
      string,
      { id: string; title: string; runways?: string[] }[]
    >;
    expect(Object.keys(list)).toEqual(['exercises', 'aeroplanes', 'aerodromes']);
    for (const thing of Object.values(list).flat()) expect(thing.title.length).toBeGreaterThan(0);
    for (const a of list.aerodromes ?? []) expect(a.runways).toHaveLength(2);
    expect(run('--list').out).toContain('normal-circuit');
  });

  it('resolves files against the folder of whoever called npm', () => {
    expect(callersFolder({ npm_lifecycle_event: 'fly', INIT_CWD: '/there' }, '/here')).toBe('/there');
    expect(callersFolder({ npm_lifecycle_event: 'test', INIT_CWD: '/there' }, '/here')).toBe('/here');
    expect(callersFolder({}, '/here')).toBe('/here');
  });
});

describe('what was entered in the page', () => {
  const still = ['--controls', 'none', '--duration', '0'];
  const scenarioOf = (...args: string[]): Result['scenario'] => {
    const { error, out } = run(...still, ...args);
    expect(error).toBe('');
    return (JSON.parse(out) as Result).scenario;
  };

  it('flies from the one file: the runway as it was entered, the card’s figures on the model', () => {
    const model = aeroplaneJson('sandpiper') as unknown as Result['scenario']['aeroplane'];
    const { baseRpm, ...plan } = model.plan;
    const own = hold('mine.json', {
      kind: 'lapwing-own',
      version: 1,
      aerodromes: [{ ...aerodromeJson('plover-meadow'), id: 'own-field', title: 'Field' }],
      cards: [
        {
          id: 'own-trainer',
          title: 'Trainer',
          flownBy: 'sandpiper',
          speeds: { ...model.speeds, finalKt: 63 },
          plan,
          rpm: { downwind: null, base: baseRpm - 100, final: null },
          limits: { crosswindKt: 10, tailwindKt: 2 },
        },
      ],
    });
    const scenario = scenarioOf('--aerodrome', own, '--aeroplane', own);
    expect(scenario.aerodrome.title).toBe('Field');
    expect(scenario.aeroplane.title).toBe('Trainer');
    expect(scenario.aeroplane.speeds.finalKt).toBe(63);
    expect(scenario.aeroplane.plan.baseRpm).toBe(baseRpm - 100);
    expect(scenario.aeroplane.wing).toEqual(model.wing);
  });

  it('takes a METAR, its wind true, and lets explicit options win', () => {
    // Curlew Sands has a variation of 1 degree west: "variation west, magnetic best" (common practice).
    const metar = 'ABCD 211350Z 24012G22KT 9999 SCT025 18/12 Q1004';
    const { weather, runway } = scenarioOf('--metar', metar);
    expect(weather).toMatchObject({
      windFromDegM: 241,
      windKt: 12,
      gustKt: 22,
      temperatureC: 18,
      dewPointC: 12,
    });
    expect(weather.qnhHpa).toBe(1004);
    expect(runway).toBe('22');
    const typed = scenarioOf('--metar', metar, '--wind', '040/08', '--temp', '25', '--qnh', '1020');
    expect(typed.weather).toMatchObject({
      windFromDegM: 40,
      windKt: 8,
      gustKt: null,
      temperatureC: 25,
      dewPointC: null,
      qnhHpa: 1020,
    });
    expect(typed.runway).toBe('04');
  });
});

describe('bad input', () => {
  const spoilt = (
    json: Record<string, unknown>,
    change: (copy: Record<string, Record<string, unknown>>) => void,
  ) => {
    change(json as Record<string, Record<string, unknown>>);
    return json;
  };
  const FILES = {
    'low.json': { ...AIR, height_ft: -20 },
    'both.json': { ...AIR, rpm: 2000 },
    'slow.json': { ...AIR, ias_kt: 20 },
    'odd.json': { ...AIR, colour: 'red' },
    'negative.json': spoilt(aeroplaneJson('sandpiper'), (a) => {
      a.wing!.areaM2 = -14;
    }),
    'missing.json': spoilt(aeroplaneJson('sandpiper'), (a) => {
      delete a.wing!.areaM2;
    }),
    'place.json': spoilt(aerodromeJson('curlew-sands'), (a) => {
      a.runway!.widthM = 0;
    }),
    'own.json': { kind: 'lapwing-own', version: 1, aerodromes: [aerodromeJson('curlew-sands')], cards: [] },
    'torn.json': '{ "east_m": ',
    'column.csv': 'elevator\n0\n',
    'text.csv': 'time_s,elevator\n0,much\n',
  };
  for (const [name, content] of Object.entries(FILES)) hold(name, content);

  it.each([
    [['--wind', '370/10'], /^--wind: direction must be 000 to 360, was 370/],
    [['--wind', 'abc'], /^--wind must be like .* was "abc"/],
    [['--wind', '220/20g15'], /gust must be above the mean wind of 20 kt, was 15/],
    [['--seed', '-1'], /^--seed must be a whole number from 0 to 4294967295, was -1/],
    [['--seed', '4294967295', '--repeat', '2'], /^--repeat must leave the last seed/],
    [['--jobs', '2'], /^--jobs must come with --repeat, found it alone/],
    [['--repeat', '2', '--jobs', '0'], /^--jobs must be a whole number from 1 to 64, was 0/],
    [['--repeat', '2', '--jobs', '1.5'], /^--jobs must be a whole number from 1 to 64, was 1\.5/],
    [['--repeat', '2', '--jobs', '65'], /^--jobs must be a whole number from 1 to 64, was 65/],
    [['--repeat', '2', '--jobs'], /^--jobs must be followed by N, found nothing/],
    [['--exercise', 'spins'], /^exercise must be one of .*normal-circuit.*, was "spins"/],
    [['--aeroplane', 'kestrel'], /^aeroplane must be one of .*sandpiper.*, was "kestrel"/],
    [['--aerodrome', 'nowhere'], /^aerodrome must be one of .*curlew-sands.*, was "nowhere"/],
    [['--runway', '09'], /^--runway must be one of 04, 22 at curlew-sands, was 09/],
    [['--start', 'orbit'], /^--start must be one of line-up, .* was orbit/],
    [['--start', 'low.json'], /^low.json: height_ft must be above the ground .* was -20/],
    [['--start', 'both.json'], /^both.json: must have exactly one of .* found flight_path_deg, rpm/],
    [['--start', 'slow.json'], /^slow.json: 20 kt .* nearest possible/],
    [['--start', 'odd.json'], /^odd.json: colour is not a key that is known here/],
    [['--start', 'torn.json'], /^torn.json: must be JSON/],
    [['--start', 'absent.json'], /^absent.json: must be a file that can be read, there is none/],
    [['--aeroplane', 'negative.json'], /^negative.json: wing.areaM2 must be above 0, was -14/],
    [['--aeroplane', 'missing.json'], /^missing.json: wing.areaM2 is missing/],
    [['--aerodrome', 'place.json'], /^place.json: runway.widthM must be above 0, was 0/],
    [['--controls', 'column.csv'], /^column.csv: row 1 must have a column time_s/],
    [['--controls', 'text.csv'], /^text.csv: row 2, elevator must be a number from -1 to 1, was "much"/],
    [['--rate', '7'], /^--rate must divide 60/],
    [['--trimmed'], /^--trimmed must come with a start in the air/],
    [['--qnh', '10'], /^--qnh must be a number from 850 to 1090, was 10/],
    [['--turbulence', 'severe'], /^--turbulence must be one of none, light, moderate, was severe/],
    [['--track', 'no-such-folder/t.csv'], /^no-such-folder\/t.csv: must lie in a folder that exists/],
    [['--track', 'same', '--gpx', 'same'], /^same: must be another file for each output/],
    [
      ['--metar', 'XXXX 211350Z VRB13KT 15/10 Q1013'],
      /^--metar: the wind group "VRB13KT" gives no direction/,
    ],
    [
      ['--metar', 'XXXX 22010KT 15/10 Q1013 MUCH'],
      /^--metar: the group "MUCH" is not one of a weather report/,
    ],
    [['--aeroplane', 'own.json'], /^own.json: cards must hold at least one, was empty/],
    [['--sped', '3'], /^options must be among .* was "--sped"/],
    [['--duration'], /^--duration must be followed by seconds, found nothing/],
    [['--seed', '1', '--seed', '2'], /^--seed must be given once/],
    [['--scenario', 'low.json', '--wind', '220/10'], /^--scenario must stand without --wind/],
    [['--play', 'low.json'], /^low.json: format is missing/],
  ])('%j is exit code 2, one line on stderr, and nothing is written', (args, sentence) => {
    const before = readdirSync(folder).sort();
    const controls = args.includes('--controls') ? [] : ['--controls', 'none'];
    const outputs = args.includes('--track') ? [] : ['--track', 'never.csv', '--result', 'never.json'];
    const { code, out, error } = run(...controls, ...outputs, ...args);
    expect(error).toMatch(sentence);
    expect(error.trimEnd().split('\n')).toHaveLength(1);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(readdirSync(folder).sort()).toEqual(before);
  });
});
