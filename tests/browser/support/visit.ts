import type { Browser, BrowserContext, Page } from 'playwright-core';

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors on the console, uncaught errors and violations of the policy so far: must stay empty. */
  readonly complaints: string[];
  /** Addresses asked for since the page stood. */
  readonly requests: string[];
  close(): Promise<void>;
}

export interface VisitOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  /** Device pixels to a CSS pixel. */
  readonly pixelRatio?: number;
  /** Worked with fingers. */
  readonly touch?: boolean;
  /** Takes the page's clock into the test's hands before anything runs. */
  readonly ownClock?: boolean;
  /** Runs in the page before its own scripts. */
  readonly before?: string;
}

/** Opens the page in a fresh context, with every complaint kept. */
export const visit = async (browser: Browser, url: string, options: VisitOptions = {}): Promise<Visit> => {
  const context = await browser.newContext({
    // uPlot and others read the locale at import; "en-US@posix" is not one.
    locale: 'en-GB',
    viewport: { width: options.width ?? 1280, height: options.height ?? 720 },
    colorScheme: options.theme ?? 'light',
    deviceScaleFactor: options.pixelRatio ?? 1,
    hasTouch: options.touch ?? false,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('request', (request) => requests.push(request.url()));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  if (options.before) await page.addInitScript(options.before);
  if (options.ownClock) await page.clock.install({ time: 0 });
  await page.goto(url);
  return { page, context, complaints, requests, close: () => context.close() };
};
