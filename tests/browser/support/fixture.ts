import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from './launch.ts';
import { openSite, type Site } from './site.ts';
import { type Visit, type VisitOptions, visit } from './visit.ts';

/** One site and one browser for all tests of a file; `open` visits the page in a fresh context. */
export const withBrowser = (): { open(options?: VisitOptions): Promise<Visit> } => {
  let site: Site | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    site = await openSite();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });
  return { open: (options) => visit(browser as Browser, (site as Site).url, options) };
};
