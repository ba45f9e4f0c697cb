import { lazy } from 'react';
import { loadPilots } from '../run/pilots.ts';
import { loadResults } from '../run/results.ts';
import { StartSheet } from './start-sheet.tsx';

const loadSetup = () => import('./setup-sheet.tsx');
const loadHelp = () => import('./help-sheet.tsx');
const loadUnfinished = () => import('./unfinished-sheet.tsx');
const loadResult = () => import('./result-sheet.tsx');

/** The sheets that can lie over the page; only the first one belongs to the first paint. */
export const SHEETS = {
  start: StartSheet,
  setup: lazy(() => loadSetup().then((m) => ({ default: m.SetupSheet }))),
  help: lazy(() => loadHelp().then((m) => ({ default: m.HelpSheet }))),
  unfinished: lazy(() => loadUnfinished().then((m) => ({ default: m.UnfinishedSheet }))),
  result: lazy(() => loadResult().then((m) => ({ default: m.ResultSheet }))),
} as const;

/** Fetches the others once the flight stands, so that none is asked for later, perhaps without a network. */
export const fetchSheets = (): Promise<unknown> =>
  Promise.all([loadSetup(), loadHelp(), loadResult(), loadUnfinished(), loadPilots(), loadResults()]);
