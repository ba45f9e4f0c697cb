import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.0 to 2.2, levels A and AA, as axe-core tags its rules. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
}

/** What axe finds on the page as it stands, one line a node. */
export const findBarriers = async (page: Page): Promise<string[]> => {
  await page.evaluate(source);
  const result = (await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run(o: unknown): Promise<unknown> } }).axe.run({ runOnly: tags }),
    TAGS,
  )) as AxeResult;
  return result.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
  );
};

/** The same in the day's and in the night's colours, where the page follows the system. */
export const findBarriersByDayAndNight = async (page: Page): Promise<string[]> => {
  const found: string[] = [];
  for (const [colorScheme, theme] of [
    ['dark', 'night'],
    ['light', 'day'],
  ] as const) {
    await page.emulateMedia({ colorScheme });
    await page.waitForFunction((now) => document.documentElement.dataset.theme === now, theme);
    for (const barrier of await findBarriers(page)) found.push(`${theme}: ${barrier}`);
  }
  return found;
};
