import { test } from 'vitest';
import { launchBrowser } from './support/launch.ts';
import { openSite } from './support/site.ts';
import { visit } from './support/visit.ts';

test('look', async () => {
  const site = await openSite();
  const browser = await launchBrowser();
  try {
    for (const [w, h, theme] of [
      [1280, 720, 'light'],
      [1024, 700, 'dark'],
    ] as const) {
      const v = await visit(browser, site.url + '#brief', {
        width: w,
        height: h,
        theme,
        before: `localStorage.setItem('lapwing/settings', ${JSON.stringify(JSON.stringify(Object.assign({ seenStart: true, wind: '250/14g22', circuit: process.env.CIRCUIT ? JSON.parse(process.env.CIRCUIT) : null }, process.env.SET ? JSON.parse(process.env.SET) : {})))})`,
      });
      await v.page.waitForSelector('.brief h1');
      await v.page.waitForTimeout(500);
      await v.page.screenshot({ path: `/tmp/I/shots/brief-${w}-${theme}.png`, fullPage: true });
      console.log(v.complaints);
      if (theme === 'light' || process.env.PDF)
        for (const format of ['A4', 'Letter'] as const)
          await v.page.pdf({
            path: `/tmp/I/shots/brief-${format}.pdf`,
            format,
            preferCSSPageSize: false,
            printBackground: false,
          });
      await v.close();
    }
  } finally {
    await browser.close();
    await site.close();
  }
});
