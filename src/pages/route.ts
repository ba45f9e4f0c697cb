import { useSyncExternalStore } from 'react';

/** The pages, by what stands after # in the address. */
export const ROUTES = ['fly', 'brief', 'own', 'exercises', 'debrief', 'logbook'] as const;
export type Route = (typeof ROUTES)[number];

/** The page the address asks for; the flying page for anything else. */
export const routeNow = (): Route => {
  const [asked] = location.hash.slice(1).split('/');
  return ROUTES.find((route) => route === asked) ?? 'fly';
};

const follow = (changed: () => void): (() => void) => {
  addEventListener('hashchange', changed);
  return () => removeEventListener('hashchange', changed);
};

export const useRoute = (): Route => useSyncExternalStore(follow, routeNow);

/** What stands behind the page in the address, `#debrief/<attempt>`; empty when nothing does. */
export const routeDetail = (): string => location.hash.slice(1).split('/')[1] ?? '';

export const useRouteDetail = (): string => useSyncExternalStore(follow, routeDetail);

/** Turns to a page; the browser's way back leads here again. */
export const goTo = (route: Route, detail = ''): void => {
  location.hash = detail === '' ? route : `${route}/${detail}`;
};
