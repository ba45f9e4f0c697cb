// The built page in a real Chromium: cold start on a slow machine, work and garbage of a frame while flying.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { createServer } from 'vite';
import { pausesOf, tasksOf, workPerFrame } from './trace.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Runs the TypeScript of the browser tests' own support. */
const runner = await createServer({
  root,
  configFile: false,
  logLevel: 'error',
  appType: 'custom',
  server: { middlewareMode: true, watch: null, ws: false },
  optimizeDeps: { noDiscovery: true },
});
const support = (name) => runner.ssrLoadModule(`/tests/browser/support/${name}.ts`);
const { openSite } = await support('site');
const { launchBrowser } = await support('launch');
const { visit } = await support('visit');

const WARM_S = 15;
const FLY_S = 15;
const SLOWDOWN = 4;
const STARTS = 3;

const gzippedKb = (url) => gzipSync(readFileSync(join(root, 'dist', new URL(url).pathname))).length / 1024;

/** Counts the frames that the page draws. */
const COUNT_FRAMES = `
  const real = window.requestAnimationFrame.bind(window);
  let last = -1;
  window.framesDrawn = 0;
  window.requestAnimationFrame = (then) => real((now) => {
    if (now !== last) window.framesDrawn += 1;
    last = now;
    then(now);
  });
`;

/**
 * The graphics card's part is left out: in software it takes ten times as long as all the rest and would hold the
 * page at a few frames a second. What the main thread does to ask for it stays.
 */
const WITHOUT_CARD = `
  for (const call of ['drawElements', 'drawArrays', 'clear']) WebGL2RenderingContext.prototype[call] = () => {};
`;

const say = (row) => console.log(JSON.stringify({ sense: 'at most', ...row }));
const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
const share = (values, part) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * part)] ?? Number.NaN;
const seconds = (s) => new Promise((resolve) => setTimeout(resolve, 1000 * s));

const readyButton = (page) => page.getByRole('button', { name: 'watch one flown' });
const untilReady = async (page) => {
  await page.waitForFunction(() =>
    [...document.querySelectorAll('button')].some((b) => b.textContent === 'watch one flown' && !b.disabled),
  );
  return page.evaluate(() => performance.now());
};

const coldStart = async (browser, url) => {
  const opened = await visit(browser, 'about:blank');
  const session = await opened.context.newCDPSession(opened.page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  await opened.page.goto(url);
  const readyMs = await untilReady(opened.page);
  await opened.close();
  return readyMs / 1000;
};

const traced = async (browser, during) => {
  const session = await browser.newBrowserCDPSession();
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'],
    },
  });
  await during();
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await complete;
  await session.detach();
  return events;
};

const sumOfSamples = (node) =>
  node.selfSize + node.children.reduce((sum, child) => sum + sumOfSamples(child), 0);

/** Bytes allocated by the page's scripts while `during` lasts, dead or alive. */
const allocated = async (session, during) => {
  await session.send('HeapProfiler.startSampling', {
    samplingInterval: 4096,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  });
  await during();
  const { profile } = await session.send('HeapProfiler.stopSampling');
  return sumOfSamples(profile.head);
};

const site = await openSite();
const browser = await launchBrowser();
try {
  const starts = [];
  for (let i = 0; i < STARTS; i += 1) starts.push(await coldStart(browser, site.url));
  say({
    name: `cold start to the aeroplane ready, ${SLOWDOWN}x CPU slowdown`,
    figure: median(starts),
    unit: 's',
    budget: 3,
  });

  const { page, context, requests, close } = await visit(browser, site.url, {
    before: COUNT_FRAMES + WITHOUT_CARD,
  });
  await untilReady(page);
  await readyButton(page).click();
  // At four times the rate the engine sooner sees what is worth compiling
  await page.keyboard.press('4');
  await seconds(WARM_S);
  await page.keyboard.press('1');
  const events = await traced(browser, () => seconds(FLY_S));
  const frames = workPerFrame(tasksOf(events));
  say({ name: 'frames drawn in a second', figure: frames.length / FLY_S, unit: '', budget: null });
  const works = frames.map((frame) => frame.workMs);
  say({
    name: 'main thread a frame while flying, median',
    figure: share(works, 0.5),
    unit: 'ms',
    budget: null,
  });
  say({ name: 'main thread a frame while flying, p95', figure: share(works, 0.95), unit: 'ms', budget: 4 });
  say({
    name: 'longest task while flying',
    figure: Math.max(...frames.map((frame) => frame.longestMs)),
    unit: 'ms',
    budget: 50,
  });

  say({
    name: 'longest pause to collect garbage while flying',
    figure: Math.max(0, ...pausesOf(events)),
    unit: 'ms',
    budget: 5,
  });

  const session = await context.newCDPSession(page);
  const before = await page.evaluate(() => window.framesDrawn);
  const bytes = await allocated(session, () => seconds(FLY_S));
  const drawn = (await page.evaluate(() => window.framesDrawn)) - before;
  say({ name: 'garbage a frame while flying', figure: bytes / drawn / 1024, unit: 'KB', budget: 2 });
  const scripts = [...new Set(requests)].filter((url) => url.endsWith('.js'));
  say({
    name: `JavaScript asked for so far (${scripts.length} files), gzip`,
    figure: scripts.reduce((sum, url) => sum + gzippedKb(url), 0),
    unit: 'KB',
    budget: 340,
  });
  await close();
} finally {
  await browser.close();
  await site.close();
  await runner.close();
}
