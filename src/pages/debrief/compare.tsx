import { useEffect, useState } from 'react';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import { limitsOf } from '../../lesson/judge/edit-tolerances.ts';
import type { Recording } from '../../session/recording.ts';
import type { Study } from '../../workers/ask-study.ts';
import { theLogbook } from '../logbook-here.ts';
import { dayText } from '../shown/when.ts';
import { layOut, type Replayed } from './replayed.ts';
import { onClockOf, studyFlightOf } from './study-here.ts';

/** What a flight is compared with: nothing, the model pilot, the one change that was found, or an attempt by its id. */
export type Against = '' | 'model' | 'root' | (string & {});

interface CompareProps {
  readonly row: AttemptRow;
  readonly against: Against;
  readonly onAgainst: (against: Against) => void;
  /** There is a changed flight to look at. */
  readonly hasRoot: boolean;
  readonly says: string;
}

const MOST = 30;

/** Attempts that can lie on the same drawing: same aerodrome and runway. */
const useComparable = (row: AttemptRow): readonly AttemptRow[] => {
  const [rows, setRows] = useState<readonly AttemptRow[]>([]);
  useEffect(() => {
    let gone = false;
    theLogbook()
      .then((book) => book.list())
      .then((all) => {
        const same = all.filter(
          (other) => other.id !== row.id && other.aerodrome === row.aerodrome && other.runway === row.runway,
        );
        if (!gone) setRows(same.slice(0, MOST));
      });
    return () => {
      gone = true;
    };
  }, [row]);
  return rows;
};

const kinship = (row: AttemptRow, other: AttemptRow): string => {
  if (row.parent?.id === other.id) return 'what this one branched off: ';
  return other.parent?.id === row.id ? 'another way from here: ' : '';
};

/** Chooses the second aeroplane. */
export const Compare = ({ row, against, onAgainst, hasRoot, says }: CompareProps) => {
  const rows = useComparable(row);
  return (
    <span className="compare no-print">
      <label htmlFor="against">compare with</label>
      <select id="against" value={against} onChange={(event) => onAgainst(event.currentTarget.value)}>
        <option value="">nothing</option>
        {hasRoot ? <option value="root">this flight with the one change</option> : null}
        <option value="model">the model pilot in this wind</option>
        {rows.map((other) => (
          <option key={other.id} value={other.id}>
            {kinship(row, other)}
            {dayText(other.when)}, {other.pilot}, {other.exercise.replaceAll('-', ' ')}
          </option>
        ))}
      </select>
      {says ? (
        <span role="status" className="soft">
          {says}
        </span>
      ) : null}
    </span>
  );
};

interface Second {
  readonly second: Replayed | null;
  readonly says: string;
}

const NONE: Second = { second: null, says: '' };

const byModelPilot = async (study: Study, replayed: Replayed): Promise<Recording | null> => {
  const done = await study.ask({ task: 'model-pilot', flight: studyFlightOf(replayed), fromS: null }).result;
  if (done === null) return null;
  if ('refused' in done) throw new Error(done.refused);
  return done.flown.recording;
};

/** The second flight, laid out on the first one's clock; null while there is none. */
export const useSecond = (
  replayed: Replayed | null,
  against: Against,
  study: Study | null,
  root: Recording | null,
  parent: string | null,
): Second => {
  const [state, setState] = useState<Second>(NONE);
  useEffect(() => {
    setState(NONE);
    if (replayed === null || study === null || against === '') return;
    let gone = false;
    const find = async (): Promise<Replayed | null> => {
      // What branched off this very flight shares its clock.
      if (against === 'root') return root && layOut(root, replayed.limits);
      const other = against === 'model' ? null : (await (await theLogbook()).open(against)).attempt;
      const recording = other === null ? await byModelPilot(study, replayed) : other.recording;
      if (recording === null) return null;
      const second = layOut(recording, other === null ? replayed.limits : limitsOf(other.judgedBy));
      return against === parent ? second : onClockOf(replayed, second);
    };
    if (against === 'model') setState({ second: null, says: 'The model pilot is flying it …' });
    find().then(
      (second) => gone || setState({ second, says: '' }),
      (error: unknown) =>
        gone || setState({ second: null, says: error instanceof Error ? error.message : '' }),
    );
    return () => {
      gone = true;
    };
  }, [replayed, against, study, root, parent]);
  return state;
};
