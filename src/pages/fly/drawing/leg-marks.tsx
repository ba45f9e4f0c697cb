import { legWords } from '../../../lesson/names.ts';
import { BAND_WORDS } from '../../shown/bands.ts';
import { useStore } from '../../store.ts';

/** Quiet marks: what was judged of the legs that are over, a shape for each row; the result says the rest. */
export const LegMarksSoFar = () => {
  const legs = useStore((s) => s.marks);
  if (legs.length === 0) return null;
  return (
    <ul className="leg-marks" aria-label="Judged so far">
      {legs.map(({ leg, marks }) => (
        <li key={leg}>
          {legWords(leg)}{' '}
          {marks.map(({ title, band }) => (
            <span key={title} className={`band band-${band}`} title={`${title}: ${BAND_WORDS[band]}`}>
              <span className="only-heard">
                {title} {BAND_WORDS[band]},
              </span>
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
};
