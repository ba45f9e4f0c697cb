import { loadExercises } from '../../exercises-room.ts';
import { useStore } from '../../store.ts';
import { fetchSheets } from '../sheets/sheets.tsx';
import { loadPilots } from './pilots.ts';

/** Loads the flight and its drawing after the shell has been painted; returns the way to end it. */
export const loadFlight = (canvas: HTMLCanvasElement): (() => void) => {
  let ended = false;
  let end: (() => void) | null = null;
  const begin = async () => {
    const { others, exercise } = useStore.getState().settings;
    const [{ beginFlight }] = await Promise.all([
      import('./flight.ts'),
      ...(others > 0 ? [loadPilots()] : []),
      ...(exercise === '' ? [] : [loadExercises()]),
    ] as const);
    if (!ended) end = beginFlight(canvas);
    await fetchSheets();
  };
  // Two frames: one to lay out, one to have been painted.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      begin().catch((error: unknown) => {
        useStore.setState({
          failed: `The flight did not load: ${error instanceof Error ? error.message : error}`,
        });
      });
    }),
  );
  return () => {
    ended = true;
    end?.();
  };
};
