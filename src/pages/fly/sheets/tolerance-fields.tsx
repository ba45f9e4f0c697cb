import { useState } from 'react';
import type { Limit } from '../../../lesson/judge/limit.ts';
import { LIMIT_TITLES, TOLERANCE_SETS } from '../../../lesson/judge/tolerances.ts';
import type { Settings } from '../../settings.ts';
import { ChoiceField } from '../../shown/field.tsx';
import { tolerancesOf } from '../../tolerances.ts';

/** How sure a figure is, as the instructor reads it. */
const SURE: Readonly<Record<Limit['sure'], string>> = {
  seen: 'read in the source',
  quoted: 'quoted by another source',
  memory: 'from memory',
  practice: 'common practice',
  own: 'entered by you',
};
const UNSURE: ReadonlySet<Limit['sure']> = new Set(['memory', 'practice']);

const titleOf = (name: string): string => LIMIT_TITLES[name] ?? name;

interface Wrong {
  readonly field: string;
  readonly sentence: string;
}

interface Props {
  readonly draft: Settings;
  readonly onChange: (changes: Partial<Settings>) => void;
}

/** The set that flights are judged by, and its limits: each may be changed, those that no document carries are marked. */
export const ToleranceFields = ({ draft, onChange }: Props) => {
  const set = tolerancesOf(draft);
  const id = TOLERANCE_SETS.some((each) => each.id === draft.tolerances)
    ? draft.tolerances
    : 'licence-test-faa';
  const [wrong, setWrong] = useState<Wrong | null>(null);
  const own = draft.ownLimits[id] ?? {};
  const change = (name: string, limit: Limit, side: 'below' | 'above', text: string) => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value) || value < 0) {
      const sentence = `${titleOf(name)}, ${side} must be a number from 0, was "${text}"; the limit stays ${limit[side]}.`;
      setWrong({ field: `${name}-${side}`, sentence });
      return;
    }
    setWrong(null);
    const { below, above } = limit;
    const changed = { below, above, [side]: value };
    onChange({ ownLimits: { ...draft.ownLimits, [id]: { ...own, [name]: changed } } });
  };
  const asPublished = () => {
    const { [id]: _, ...others } = draft.ownLimits;
    onChange({ ownLimits: others });
  };
  return (
    <>
      <ChoiceField
        label="Judged by"
        hint="the tolerances of a flight, from its beginning on"
        value={id}
        choices={TOLERANCE_SETS.map((each) => [each.id, each.title] as const)}
        onChange={(tolerances) => onChange({ tolerances })}
      />
      <details className="tolerances">
        <summary>{set.title}: the limits, to be read and changed</summary>
        <p className="soft">
          Where a limit rests on memory or on common practice alone, ask your instructor and enter what holds
          for you.
        </p>
        <p className="wrong" id="limit-wrong" role="alert">
          {wrong?.sentence}
        </p>
        <table>
          <thead>
            <tr>
              <th scope="col">limit</th>
              <th scope="col">below</th>
              <th scope="col">above</th>
              <th scope="col">how sure</th>
              <th scope="col">source</th>
            </tr>
          </thead>
          <tbody>
            {Object.entries(set.allowed).map(([name, limit]) => (
              <tr key={`${id}-${name}`}>
                <th scope="row">{titleOf(name)}</th>
                {(['below', 'above'] as const).map((side) => (
                  <td key={`${side}-${own[name] === undefined}`}>
                    <input
                      aria-label={`${titleOf(name)}, ${side}`}
                      inputMode="decimal"
                      defaultValue={String(limit[side])}
                      aria-invalid={wrong?.field === `${name}-${side}`}
                      aria-describedby="limit-wrong"
                      onBlur={(e) => {
                        if (e.target.value !== String(limit[side])) change(name, limit, side, e.target.value);
                        else if (wrong?.field === `${name}-${side}`) setWrong(null);
                      }}
                    />
                  </td>
                ))}
                <td className={UNSURE.has(limit.sure) ? 'unsure' : ''}>{SURE[limit.sure]}</td>
                <td className="soft">{limit.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <button type="button" disabled={Object.keys(own).length === 0} onClick={asPublished}>
          all as they were
        </button>
      </details>
    </>
  );
};
