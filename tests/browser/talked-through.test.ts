// A whole circuit flown by somebody who does what the coach says and nothing else, with real keys on the built page:
// the words have to lead round, in time, and be silent enough to be heard out (design/lesson.md, "How much help").
import { describe, expect, it } from 'vitest';
import { WITHOUT_WEBGL } from './support/cockpit.ts';
import { withBrowser } from './support/fixture.ts';
import { followTheWords } from './support/follower.ts';

const { open } = withBrowser();

const RIGHT =
  /^On the run: throttle closed, straight|ready for departure|^Runway 22, cleared for take-off|^Lapwing 21, downwind, to land$|report final, Lapwing 21$|^Lapwing 21, final$|^Runway 22, cleared to land|runway vacated$/;

const SETTINGS = {
  seenStart: true,
  coach: 'talked-through',
  radio: 'towered',
  wind: '230/07',
  start: 'line-up',
};

describe('a student who follows only the words', () => {
  it('is led from the first check round to a stop on the runway', async () => {
    const { page, complaints, close } = await open({
      ownClock: true,
      before: `${WITHOUT_WEBGL}
        if (!localStorage.getItem('lapwing/settings'))
          localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify(SETTINGS))});`,
    });
    for (let i = 0; i < 200 && (await page.locator('.freeze:enabled').count()) === 0; i += 1) {
      await page.clock.runFor(50);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await page.keyboard.press('0');
    const { said } = await followTheWords(page, RIGHT);
    const result = page.locator('.sheet-result');
    const transcript = said.map(({ clock, leg, text }) => `${clock} ${leg}: ${text}`).join('\n');
    expect(await result.getByRole('heading').first().textContent(), transcript).toContain('Stopped');
    const legs = said.map(({ text }) => text.split(/[:.,;]/)[0]);
    // Each turn is announced once, in the order of the circuit
    expect(legs.filter((text) => text?.startsWith('Turn left'))).toEqual([
      'Turn left to crosswind now',
      'Turn left to downwind now',
      'Turn left to base now',
      'Turn left to final now',
    ]);
    const band = async (name: string): Promise<string> =>
      (await result.locator('tr', { hasText: name }).locator('.band').first().textContent()) ?? '';
    for (const onto of ['crosswind', 'downwind', 'base', 'final'])
      expect(await band(`Turn to ${onto}: lookout before it`), onto).toContain('inside');
    expect(await band('calls')).toContain('100');
    expect(await band('without a clearance')).toContain('inside');
    expect(complaints).toEqual([]);
    await close();
  }, 300_000);
});
