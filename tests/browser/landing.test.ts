import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Meters, readLeg, readMeters, WITHOUT_WEBGL, waitUntilReady } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';

const { open } = withBrowser();

/** Between two looks at the meters, and how long a key is struck: nobody's eyes and fingers are faster. */
const LOOK_MS = 250;
const STROKE_MS = 90;

/** Curlew Sands, runway 22: 3 degrees are 318 ft in a nautical mile; aim point 300 m in; elevation 20 ft. */
const PLACE = { slopeFtPerNmi: 318.4, aimNmi: 300 / 1852, elevationFt: 20, headingDegM: 220 } as const;
/** What the trainer needs on that slope (model.md: final 65 kt on 3 degrees, 1,760 rpm with flap 20). */
const FINAL = { kt: 65, rpm: 1790, pitchDeg: -0.5 } as const;

interface Sight {
  readonly meters: Meters;
  readonly leg: string;
}

/** A key to strike when a value is off by more than a little either way. */
const correct = (keys: string[], off: number, little: number, whenHigh: string, whenLow: string): void => {
  if (off > little) keys.push(whenHigh);
  if (off < -little) keys.push(whenLow);
};

const heightFt = (meters: Meters): number => meters('Altitude') - PLACE.elevationFt;

/** Down the slope: power for the path, a little pitch for the speed, bank for the centreline. */
const onFinal = ({ meters }: Sight): string[] => {
  const keys: string[] = [];
  const lowFt = (meters('Distance') + PLACE.aimNmi) * PLACE.slopeFtPerNmi - heightFt(meters);
  const sinkingFast = -340 - meters('Vertical speed');
  const rpm = FINAL.rpm + Math.max(-350, Math.min(400, 5 * lowFt + 0.6 * sinkingFast));
  correct(keys, meters('Power') - rpm, 60, 's', 'w');
  const pitch = FINAL.pitchDeg + Math.max(-2.5, Math.min(2.5, 0.3 * (meters('Airspeed') - FINAL.kt)));
  correct(keys, meters('Pitch') - pitch, 0.4, 'ArrowUp', 'ArrowDown');
  const bank = Math.max(-8, Math.min(8, -0.25 * meters('Offset')));
  correct(keys, meters('Bank') - bank, 1.5, 'ArrowLeft', 'ArrowRight');
  return keys;
};

/** Power off, wings level, and the nose slowly up to hold it off. */
const holdingOff = ({ meters }: Sight): string[] => {
  const keys = ['s'];
  if (meters('Pitch') < 7) keys.push('ArrowDown');
  correct(keys, meters('Bank'), 1.5, 'ArrowLeft', 'ArrowRight');
  return keys;
};

/** Straight with the feet, brakes in short strokes. */
const onTheGround = ({ meters }: Sight): string[] => {
  const keys = ['s', 'b'];
  correct(
    keys,
    meters('Heading') - PLACE.headingDegM + 1.2 * meters('Offset'),
    1.5,
    'ArrowLeft',
    'ArrowRight',
  );
  return keys;
};

const keysFor = (sight: Sight): { readonly keys: string[]; readonly ms: number } => {
  if (/roll|stopped/i.test(sight.leg)) return { keys: onTheGround(sight), ms: STROKE_MS };
  if (heightFt(sight.meters) < 22) return { keys: holdingOff(sight), ms: LOOK_MS };
  return { keys: onFinal(sight), ms: STROKE_MS };
};

const strike = async (page: Page, keys: readonly string[], ms: number): Promise<void> => {
  for (const key of keys) await page.keyboard.down(key);
  await page.clock.runFor(ms);
  for (const key of keys) await page.keyboard.up(key);
  if (ms < LOOK_MS) await page.clock.runFor(LOOK_MS - ms);
};

describe('a program that reads the meters and presses keys', () => {
  it('lands from final and stops on the runway', async () => {
    const { page, complaints, close } = await open({ ownClock: true, before: WITHOUT_WEBGL });
    await waitUntilReady(page);
    await page.getByRole('button', { name: 'fly from final' }).click();
    await page.clock.runFor(100);
    const result = page.locator('.sheet-result');
    for (let i = 0; i < 600 && (await result.count()) === 0; i += 1) {
      const { keys, ms } = keysFor({ meters: await readMeters(page), leg: await readLeg(page) });
      await strike(page, keys, ms);
    }
    expect(await result.getByRole('heading').first().textContent()).toContain('Stopped');
    expect(await result.locator('p').first().textContent()).toContain('of runway left');
    expect(complaints).toEqual([]);
    await close();
  });
});
