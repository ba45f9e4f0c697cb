import { useEffect, useRef, useState } from 'react';
import { trainsFirst } from '../../flight/result-words.ts';
import type { FlownResult } from '../../formats/result.ts';
import type { RootProgress, RootResult } from '../../study/root/result.ts';
import type { TrailPiece } from '../../study/trail.ts';
import type { Asked, Study } from '../../workers/ask-study.ts';
import { debriefWords } from './first-words.ts';
import type { Replayed } from './replayed.ts';
import { studyFlightOf } from './study-here.ts';

/** How far the search is. */
export interface RootSearch {
  readonly state: 'searching' | 'found' | 'cancelled' | 'failed';
  readonly progress: RootProgress | null;
  readonly result: RootResult | null;
  readonly why: string;
  cancel(): void;
  again(): void;
}

const isRootProgress = (progress: object): progress is RootProgress => 'trying' in progress;

const SEARCHING: Omit<RootSearch, 'cancel' | 'again'> = {
  state: 'searching',
  progress: null,
  result: null,
  why: '',
};

/** Asks the study for the root and then for the colours of the trail; stops when the page is left. */
export const useRoot = (
  replayed: Replayed | null,
  study: Study | null,
  onTrail: (trail: readonly TrailPiece[]) => void,
): RootSearch => {
  const asked = useRef<Asked<RootResult> | null>(null);
  const [state, setState] = useState(SEARCHING);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (replayed === null || study === null || !replayed.exact) return;
    if (tries > 0) setState(SEARCHING);
    let gone = false;
    const flight = studyFlightOf(replayed);
    const trail = study.ask({ task: 'trail', flight, circuit: null });
    const root = study.ask({ task: 'root', flight, circuit: null }, (progress) => {
      if (!gone && isRootProgress(progress)) setState((s) => ({ ...s, progress }));
    });
    asked.current = root;
    root.result.then(
      (result) => gone || setState((s) => ({ ...s, state: result ? 'found' : 'cancelled', result })),
      (error: Error) => gone || setState((s) => ({ ...s, state: 'failed', why: error.message })),
    );
    trail.result.then(
      (pieces) => {
        if (!gone && pieces) onTrail(pieces);
      },
      () => undefined,
    );
    return () => {
      gone = true;
      root.cancel();
      trail.cancel();
    };
  }, [replayed, study, onTrail, tries]);
  return { ...state, cancel: () => asked.current?.cancel(), again: () => setTries(tries + 1) };
};

interface RootPanelProps {
  readonly report: FlownResult;
  readonly exact: boolean;
  readonly search: RootSearch;
  readonly onWatch: () => void;
  readonly onTrain: (exercise: string) => void;
}

const Searching = ({ search }: { readonly search: RootSearch }) => {
  const { progress } = search;
  return (
    <div className="root-search no-print">
      <progress max={1} value={progress?.done ?? 0} aria-label="Search for the earliest single change" />
      <span role="status">
        {progress === null
          ? 'Looking for the earliest single change …'
          : `${progress.flightsFlown} flights flown${progress.best ? `; best so far: ${progress.best.sentence}` : `; trying: ${progress.trying}`}`}
      </span>
      <button type="button" onClick={search.cancel}>
        cancel
      </button>
    </div>
  );
};

/** The first thing to change, found by flying it; until it is found, what the report says first. */
export const RootPanel = ({ report, exact, search, onWatch, onTrain }: RootPanelProps) => {
  const { result } = search;
  const { first, after } = debriefWords(report, result);
  const trains = result?.nextTime?.exercise ?? trainsFirst(report);
  return (
    <section className="root" aria-label="The first thing to change">
      <div className="root-words">
        <p className="root-sentence">{first}</p>
        {after.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {result?.nextTime ? (
          <p>
            <strong>Next time:</strong> {result.nextTime.sentence}
          </p>
        ) : null}
        {result?.kind === 'not-searched' ? <p className="soft">{result.why || result.sentence}</p> : null}
        {exact && search.state === 'searching' ? <Searching search={search} /> : null}
        {search.state === 'cancelled' ? (
          <p className="soft">
            The search was stopped
            {search.progress?.best ? `; the best so far was: ${search.progress.best.sentence}` : '.'}
          </p>
        ) : null}
        {search.state === 'failed' ? (
          <p className="wrong">
            The search failed: {search.why}{' '}
            <button type="button" className="no-print" onClick={search.again}>
              search again
            </button>
          </p>
        ) : null}
      </div>
      <div className="root-doors no-print">
        {result?.branch ? (
          <button type="button" onClick={onWatch}>
            watch both
          </button>
        ) : null}
        {trains === null ? null : (
          <button type="button" className="strong" onClick={() => onTrain(trains)}>
            train this
          </button>
        )}
      </div>
    </section>
  );
};
