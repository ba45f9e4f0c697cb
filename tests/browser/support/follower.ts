import type { Page } from 'playwright-core';

/**
 * A student who knows the keys and nothing else: what to aim for comes from the coach's sentences alone, and is held
 * by reading the scales. Only the last of final has a line of its own, to the aim point that one sees in the window.
 */
export interface Sight {
  readonly meters: Readonly<Record<string, number>>;
  readonly coach: string;
  readonly leg: string;
  readonly clock: string;
  readonly options: readonly string[];
  readonly openItems: number;
  readonly over: boolean;
}

export const seeCockpit = (page: Page): Promise<Sight> =>
  page.evaluate(() => {
    const text = (selector: string): string => document.querySelector(selector)?.textContent ?? '';
    const all = [...document.querySelectorAll<HTMLElement>('[role=meter]')];
    return {
      meters: Object.fromEntries(
        all.map((meter) => [meter.dataset.meter ?? '', Number(meter.getAttribute('aria-valuenow'))]),
      ),
      coach: text('.coach-line'),
      leg: text('.bar-leg'),
      clock: text('.clock'),
      options: [...document.querySelectorAll('.radio-options button')].map((each) => each.textContent ?? ''),
      openItems: document.querySelectorAll('.card-check input:not(:checked)').length,
      over: document.querySelector('.sheet-result') !== null,
    };
  });

type Phase = 'wait' | 'roll' | 'climb' | 'level' | 'descend' | 'final' | 'flare' | 'hold' | 'landed';

/** By what they begin with: sentences that change what the hands do. */
const PHASES: readonly (readonly [RegExp, Phase])[] = [
  [/full power, smoothly/, 'roll'],
  [/^Climb at/, 'climb'],
  [/^Coming up to/, 'level'],
  [/then let it come down/, 'descend'],
  [/keep the aim point/, 'final'],
  [/^Round out/, 'flare'],
  [/^Hold it off/, 'hold'],
  [/^Straight with the feet, hold/, 'landed'],
];

interface Aims {
  phase: Phase;
  rotateKt: number;
  headingDeg: number;
  altitudeFt: number;
  kt: number;
  rpm: number;
  flapStage: number;
  heat: boolean;
}

const within = (x: number, most: number): number => Math.max(-most, Math.min(most, x));
const figure = (found: RegExpExecArray | null): number | null =>
  found === null ? null : Number(found[1]?.replace(',', ''));

/** What a sentence asks for. */
const hear = (aims: Aims, said: string): void => {
  for (const [words, phase] of PHASES) if (words.test(said)) aims.phase = phase;
  if (said.startsWith('Airspeed alive')) aims.rotateKt = figure(/At (\d+) knots/.exec(said)) ?? aims.rotateKt;
  else aims.kt = figure(/(\d+) knots/.exec(said)) ?? aims.kt;
  aims.headingDeg = figure(/heading (\d+)/.exec(said)) ?? aims.headingDeg;
  aims.altitudeFt = figure(/Coming up to ([\d,]+) feet/.exec(said)) ?? aims.altitudeFt;
  aims.rpm = figure(/([\d,]+) rpm/.exec(said)) ?? aims.rpm;
  aims.flapStage = (figure(/flap (\d+)/i.exec(said)) ?? 10 * aims.flapStage) / 10;
  if (/heat hot/.test(said)) aims.heat = true;
  if (/heat cold/.test(said)) aims.heat = false;
};

const strokes = (aims: Aims, m: Readonly<Record<string, number>>): string[] => {
  const keys: string[] = [];
  const at = (name: string): number => m[name] ?? 0;
  const correct = (off: number, little: number, whenHigh: string, whenLow: string): void => {
    if (off > little) keys.push(whenHigh);
    if (off < -little) keys.push(whenLow);
  };
  const pitch = (deg: number): void => correct(at('pitch') - deg, 0.4, 'ArrowUp', 'ArrowDown');
  const bank = (deg: number, little = 2): void =>
    correct(at('bank') - deg, little, 'ArrowLeft', 'ArrowRight');
  const power = (rpm: number): void => correct(at('rpm') - rpm, 50, 's', 'w');
  const turn = within(((aims.headingDeg - at('heading') + 540) % 360) - 180, 20);
  const slowKt = at('airspeed') - aims.kt;
  if (aims.phase === 'roll' || aims.phase === 'climb') keys.push('w');
  if (aims.phase === 'roll' && at('airspeed') >= aims.rotateKt && at('pitch') < 7) keys.push('ArrowDown');
  if (aims.phase === 'climb') {
    pitch(7 + within(0.4 * slowKt, 5));
    bank(within(turn, 15));
  }
  if (aims.phase === 'level') {
    pitch(0.8 + within(0.04 * (aims.altitudeFt - at('altitude')), 4) - 0.004 * at('vertical-speed'));
    if (slowKt > -3) power(aims.rpm - within(15 * slowKt, 250));
    bank(turn);
  }
  if (aims.phase === 'descend') {
    power(aims.rpm);
    pitch(-1 + within(0.35 * slowKt, 6));
    bank(turn);
  }
  if (aims.phase === 'final') {
    // Three degrees to an aim point 300 m in, 318 ft for each nautical mile
    const lowFt = (at('distance') + 0.16) * 318 - (at('altitude') - 20);
    power(aims.rpm + within(5 * lowFt - 0.6 * (at('vertical-speed') + 340), 400));
    pitch(-0.5 + within(0.3 * slowKt, 2.5));
    const track = 220 - within(0.1 * at('offset'), 14) - within(0.2 * at('offset'), 3);
    bank(within(track - at('track'), 14), 1);
  }
  if (aims.phase === 'flare' || aims.phase === 'hold') {
    keys.push('s');
    if (at('pitch') < (aims.phase === 'flare' ? 2.5 : 7)) keys.push('ArrowDown');
    // Still on the runway's line, with hardly any bank
    bank(within(220 - 0.5 * at('offset') - at('track'), 4), 1);
  }
  if (aims.phase === 'landed') {
    keys.push('s', 'b');
    correct(at('heading') - 220 + 1.2 * at('offset'), 1.5, 'ArrowLeft', 'ArrowRight');
  }
  return keys;
};

export interface Followed {
  /** Every sentence, with the leg on which it was heard. */
  readonly said: readonly { readonly clock: string; readonly leg: string; readonly text: string }[];
}

/** Follows the words until the flight is over; `right` knows the right wordings among those offered. */
export const followTheWords = async (page: Page, right: RegExp): Promise<Followed> => {
  const aims: Aims = {
    phase: 'wait',
    rotateKt: 99,
    headingDeg: 220,
    altitudeFt: 0,
    kt: 0,
    rpm: 0,
    flapStage: 0,
    heat: false,
  };
  const said: { clock: string; leg: string; text: string }[] = [];
  const now = { text: '', flap: 0, heat: false, looks: 0 };
  const press = async (key: string, ms = 60): Promise<void> => {
    await page.keyboard.down(key);
    await page.clock.runFor(ms);
    await page.keyboard.up(key);
    await page.clock.runFor(60);
  };
  const work = async (text: string): Promise<void> => {
    if (/brakes: press/.test(text)) await press('b', 700);
    if (/hot ten seconds/.test(text)) aims.heat = true;
    if (/controls full and free/.test(text))
      for (const key of ['ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowRight']) await press(key, 1600);
    const [, first, last] = /^Look out: (\w+), ahead, (\w+)/.exec(text) ?? [];
    if (first === undefined) return;
    for (const to of ['ahead', first, 'ahead', last]) {
      await press(to === 'left' ? 'q' : to === 'right' ? 'e' : 'a');
      await page.clock.runFor(350);
    }
    await press('d');
  };
  for (let i = 0; i < 2600; i += 1) {
    const sight = await seeCockpit(page);
    if (sight.over) break;
    const { clock, leg, coach, meters } = sight;
    if (coach !== '' && coach !== now.text) {
      now.text = coach;
      said.push({ clock, leg, text: coach });
      hear(aims, coach);
      await work(coach);
    }
    const choice = sight.options.find((text) => right.test(text.slice(1).trim()));
    if (choice !== undefined) await press(choice.trim()[0] as string);
    else if (sight.openItems > 0 && i % 6 === 0) await press('c');
    if (aims.flapStage !== now.flap && (meters.airspeed ?? 99) < 84) {
      const more = aims.flapStage > now.flap;
      await press(more ? 'f' : 'r');
      now.flap += more ? 1 : -1;
    }
    if (aims.heat !== now.heat) {
      await press('h');
      now.heat = aims.heat;
    }
    const keys = strokes(aims, meters);
    for (const key of keys) await page.keyboard.down(key);
    await page.clock.runFor(250);
    for (const key of keys) await page.keyboard.up(key);
    await page.clock.runFor(250);
  }
  return { said };
};
