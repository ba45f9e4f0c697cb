import { useEffect } from 'react';
import { useStore } from '../../store.ts';
import { press } from '../run/commands.ts';

/** What to show over the panels when they do not simply fly. */
const stateOf = (
  s: ReturnType<typeof useStore.getState>,
): { title: string; text: string; go: string } | null => {
  if (s.failed) return { title: 'This flight cannot begin', text: s.failed, go: '' };
  if (!s.ready) return { title: 'Rolling the aeroplane out', text: 'The panels fill in a moment.', go: '' };
  if (s.sheet) return null;
  if (s.frozen) return { title: s.begun ? 'Frozen' : 'Ready', text: '', go: s.begun ? 'go on' : 'begin' };
  return null;
};

/** Empty, failed, frozen, without drawing, with the drawing lost: each says what is and what can be done. */
export const States = () => {
  const state = useStore();
  const shown = stateOf(state);
  const drawing =
    state.graphics === 'none'
      ? state.graphicsWhy
      : state.graphics === 'lost'
        ? 'The drawing is gone for the moment (the graphics context was lost); it comes back by itself. The flight stands still until then.'
        : '';
  return (
    <>
      {drawing ? <p className="no-drawing">{drawing}</p> : null}
      {shown ? (
        <div className={`state ${shown.go ? 'state-frozen' : 'state-empty'}`}>
          <strong>{shown.title}</strong>
          {shown.text ? <span>{shown.text}</span> : null}
          {shown.go ? (
            <button type="button" className="strong" onClick={() => press('freeze')}>
              {shown.go}
            </button>
          ) : null}
        </div>
      ) : null}
    </>
  );
};

/** Long enough to read a sentence twice. */
const NOTICE_MS = 7000;

/** What was just said: seen at the foot of the page, heard by a live region that speaks at most once in 3 s. */
export const Said = () => {
  const notice = useStore((s) => s.notice);
  const spoken = useStore((s) => s.spoken);
  const frozen = useStore((s) => s.frozen);
  const frozenWhy = useStore((s) => s.frozenWhy);
  useEffect(() => {
    if (!notice) return;
    const timer = setTimeout(() => useStore.setState({ notice: '' }), NOTICE_MS);
    return () => clearTimeout(timer);
  }, [notice]);
  const instruction = useStore((s) => s.instruction);
  return (
    <>
      <p className="instruction" aria-hidden="true">
        {instruction}
      </p>
      <p className="notice" aria-hidden="true">
        {frozen && frozenWhy ? frozenWhy : notice}
      </p>
      <p className="only-heard" aria-live="polite">
        {spoken}
      </p>
    </>
  );
};
