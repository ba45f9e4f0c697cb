import { useEffect, useState } from 'react';
import { FlyPage } from './fly/page.tsx';
import { logbookPart } from './logbook-here.ts';
import { PageFailed, PageWaiting } from './parts/failed.tsx';
import { getPart } from './parts/fetch-part.ts';
import { Boundary, lazyPart } from './parts/lazy-part.tsx';
import { Missing } from './parts/missing.tsx';
import { type Route, useRoute } from './route.ts';
import { useStore } from './store.ts';

const lazyPage = (load: () => Promise<React.ComponentType>) => lazyPart(load, PageFailed, <PageWaiting />);

const BriefPage = lazyPage(
  async () => (await getPart('pages/brief/page.tsx', () => import('./brief/page.tsx'))).BriefPage,
);
const OwnPage = lazyPage(
  async () => (await getPart('pages/own/page.tsx', () => import('./own/page.tsx'))).OwnPage,
);
// These read the logbook: they are not there before it is.
const ExercisesPage = lazyPage(async () => {
  await logbookPart();
  return (await getPart('pages/exercises/page.tsx', () => import('./exercises/page.tsx'))).ExercisesPage;
});
const DebriefPage = lazyPage(async () => {
  await logbookPart();
  return (await getPart('pages/debrief/page.tsx', () => import('./debrief/page.tsx'))).DebriefPage;
});
const LogbookPage = lazyPage(async () => {
  await logbookPart();
  return (await getPart('pages/logbook/page.tsx', () => import('./logbook/page.tsx'))).LogbookPage;
});

/** One page an address; only the flying page belongs to the first load. */
const PAGES: Readonly<Record<Route, () => React.ReactNode>> = {
  fly: () => <FlyPage />,
  brief: () => <BriefPage />,
  own: () => <OwnPage />,
  exercises: () => <ExercisesPage />,
  debrief: () => <DebriefPage />,
  logbook: () => <LogbookPage />,
};

const TITLES: Readonly<Record<Route, string>> = {
  fly: 'Lapwing · fly a circuit',
  brief: 'Lapwing · brief',
  own: 'Lapwing · my runway, my numbers',
  exercises: 'Lapwing · exercises',
  debrief: 'Lapwing · debrief',
  logbook: 'Lapwing · logbook',
};

/** The page the address asks for; one that fails leaves the way to the others open. */
export const Pages = () => {
  const route = useRoute();
  const covered = useStore((s) => s.sheet !== null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    document.title = TITLES[route];
  }, [route]);
  return (
    <>
      <Boundary key={`${route} ${tries}`} Failed={PageFailed} onAgain={() => setTries(tries + 1)}>
        {PAGES[route]()}
      </Boundary>
      {route === 'fly' && covered ? null : <Missing />}
    </>
  );
};
