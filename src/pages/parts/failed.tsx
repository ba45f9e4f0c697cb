import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { useRoute } from '../route.ts';
import type { FailedProps } from './lazy-part.tsx';
import { reload, StorageWarning } from './missing.tsx';

/** What can be done, the most useful first. */
export const FailedButtons = ({ reload: only, onAgain }: Pick<FailedProps, 'reload' | 'onAgain'>) => (
  <>
    <button type="button" className={only ? '' : 'strong'} onClick={onAgain}>
      try again
    </button>
    <button type="button" className={only ? 'strong' : ''} onClick={reload}>
      reload the page
    </button>
  </>
);

/** In the place of a page that did not come or failed: why, and the ways on. */
export const PageFailed = ({ says, reload: only, onAgain }: FailedProps) => {
  const route = useRoute();
  return (
    <main className="failed">
      <h1>{only ? 'There is a newer version' : 'This page is not here'}</h1>
      <p role="alert">{says}</p>
      <StorageWarning />
      <p className="failed-doors">
        <FailedButtons reload={only} onAgain={onAgain} />
        {route === 'fly' ? null : (
          <a className="button" href="#fly">
            back to the flight
          </a>
        )}
      </p>
      <footer className="soft">{CAUTION}</footer>
    </main>
  );
};

export const PageWaiting = () => (
  <p className="failed soft" role="status">
    The page is being fetched …
  </p>
);
