import { FailedButtons } from '../../parts/failed.tsx';
import { getPart } from '../../parts/fetch-part.ts';
import { type FailedProps, lazyPart } from '../../parts/lazy-part.tsx';
import { useStore } from '../../store.ts';
import { loadPilots } from '../run/pilots.ts';
import { loadResults } from '../run/results.ts';
import { SheetOver } from './sheet.tsx';
import { StartSheet } from './start-sheet.tsx';

const loadSetup = () => getPart('pages/fly/sheets/setup-sheet.tsx', () => import('./setup-sheet.tsx'));
const loadHelp = () => getPart('pages/fly/sheets/help-sheet.tsx', () => import('./help-sheet.tsx'));
const loadUnfinished = () =>
  getPart('pages/fly/sheets/unfinished-sheet.tsx', () => import('./unfinished-sheet.tsx'));
const loadResult = () => getPart('pages/fly/sheets/result-sheet.tsx', () => import('./result-sheet.tsx'));

/** In the place of a sheet that did not come. */
const SheetFailed = ({ says, reload, onAgain }: FailedProps) => {
  const close = () => useStore.setState({ sheet: null });
  return (
    <SheetOver
      title={reload ? 'There is a newer version' : 'This sheet is not here'}
      onClose={close}
      saysMissing
    >
      <p role="alert">{says}</p>
      <div className="sheet-buttons">
        <FailedButtons reload={reload} onAgain={onAgain} />
        <button type="button" onClick={close}>
          back to the flight
        </button>
      </div>
    </SheetOver>
  );
};

/** The sheets that can lie over the page; only the first one belongs to the first paint. */
export const SHEETS = {
  start: StartSheet,
  setup: lazyPart(async () => (await loadSetup()).SetupSheet, SheetFailed),
  help: lazyPart(async () => (await loadHelp()).HelpSheet, SheetFailed),
  unfinished: lazyPart(async () => (await loadUnfinished()).UnfinishedSheet, SheetFailed),
  result: lazyPart(async () => (await loadResult()).ResultSheet, SheetFailed),
} as const;

/** Fetches the others once the flight stands, so that none is asked for later, perhaps without a network. */
export const fetchSheets = (): Promise<unknown> =>
  Promise.all([loadSetup(), loadHelp(), loadResult(), loadUnfinished(), loadPilots(), loadResults()]);
