import { loadExercises } from '../../exercises-room.ts';
import { alreadyTold, fetchPart, PartMissing } from '../../parts/fetch-part.ts';
import { useStore } from '../../store.ts';
import { fetchSheets } from '../sheets/sheets.tsx';
import { loadPilots } from './pilots.ts';

/** Loads the flight and its drawing after the shell has been painted; returns the way to end it. */
export const loadFlight = (canvas: HTMLCanvasElement): (() => void) => {
  let ended = false;
  let end: (() => void) | null = null;
  const tryIt = () => {
    begin().catch((error: unknown) => {
      const says = error instanceof Error ? error.message : String(error);
      if (!(error instanceof PartMissing)) {
        useStore.setState({ failed: `The flight did not load: ${says}` });
        return;
      }
      const again = error.reload ? null : tryIt;
      useStore.setState({
        failed: 'The flight did not load; try again below, or reload the page.',
        missing: { says, reload: error.reload, again },
      });
    });
  };
  const begin = async () => {
    const { others, exercise } = useStore.getState().settings;
    const [{ beginFlight }] = await Promise.all([
      fetchPart('pages/fly/run/flight.ts', () => import('./flight.ts')),
      ...(others > 0 ? [loadPilots()] : []),
      ...(exercise === '' ? [] : [loadExercises()]),
    ] as const);
    if (!ended) end = beginFlight(canvas);
    fetchSheets().catch(alreadyTold);
  };
  // Two frames: one to lay out, one to have been painted.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      tryIt();
    }),
  );
  return () => {
    ended = true;
    end?.();
  };
};
