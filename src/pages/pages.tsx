import { lazy, Suspense, useEffect } from 'react';
import { FlyPage } from './fly/page.tsx';
import { type Route, useRoute } from './route.ts';

const BriefPage = lazy(() => import('./brief/page.tsx').then((m) => ({ default: m.BriefPage })));
const DebriefPage = lazy(() => import('./debrief/page.tsx').then((m) => ({ default: m.DebriefPage })));
const ExercisesPage = lazy(() => import('./exercises/page.tsx').then((m) => ({ default: m.ExercisesPage })));
const LogbookPage = lazy(() => import('./logbook/page.tsx').then((m) => ({ default: m.LogbookPage })));
const OwnPage = lazy(() => import('./own/page.tsx').then((m) => ({ default: m.OwnPage })));

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

/** The page the address asks for. */
export const Pages = () => {
  const route = useRoute();
  useEffect(() => {
    document.title = TITLES[route];
  }, [route]);
  return <Suspense>{PAGES[route]()}</Suspense>;
};
