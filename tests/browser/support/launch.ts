import { existsSync } from 'node:fs';
import type { Browser } from 'playwright-core';

/** Our own arguments: software WebGL 2, web security left on, several processes. */
const ARGUMENTS = [
  '--no-sandbox',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

/** Where other systems usually keep a Chromium. */
const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

export const NO_BROWSER =
  'No browser for the tests: install Chrome or Chromium, or put the path of one into LAPWING_BROWSER.';

const packaged = async (): Promise<string | null> => {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  // Makes the package use its own copy of libnss3 where the system has none; must stand before the import.
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs20.x';
  const { default: chromium } = await import('@sparticuz/chromium');
  return chromium.executablePath();
};

const executable = async (): Promise<string> => {
  const named = process.env.LAPWING_BROWSER;
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`LAPWING_BROWSER must be the path of a Chromium; there is no file ${named}`);
  }
  const path = (await packaged()) ?? INSTALLED.find((candidate) => existsSync(candidate));
  if (path) return path;
  throw new Error(NO_BROWSER);
};

/** Launches a Chromium; one that another process is still unpacking ("text file busy") is tried again. */
export const launchBrowser = async (): Promise<Browser> => {
  const executablePath = await executable();
  const { chromium } = await import('playwright-core');
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await chromium.launch({ executablePath, args: ARGUMENTS });
    } catch (error) {
      if (attempt >= 5 || !String(error).includes('ETXTBSY')) throw error;
      await new Promise((resolve) => setTimeout(resolve, 500 * attempt));
    }
  }
};
