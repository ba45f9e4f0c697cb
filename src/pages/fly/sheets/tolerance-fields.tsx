import { useState } from 'react';
import { type Limit, type LimitName, TOLERANCE_SETS } from '../../../lesson/judge/tolerances.ts';
import { ChoiceField } from '../../field.tsx';
import type { Settings } from '../../settings.ts';
import { tolerancesOf } from '../../tolerances.ts';

/** Units that end a limit's name, as they are written beside it. */
const UNITS: Readonly<Record<string, string>> = {
  Ft: 'ft',
  Kt: 'kt',
  Deg: '°',
  M: 'm',
  S: 's',
  Fpm: 'ft/min',
  Rpm: 'rpm',
  Hpa: 'hPa',
  Percent: '%',
  Share: 'of the planned',
  Items: 'items',
  Hundredths: 'hundredths of g (a ball’s width is 14)',
  DegKpa: 'pressure in the hand, 1 is light',
};

/** "approachSpeedKt" as "approach speed, kt". */
export const limitWords = (name: LimitName): string => {
  const unit = Object.keys(UNITS)
    .sort((a, b) => b.length - a.length)
    .find((each) => name.endsWith(each));
  const words = (unit === undefined ? name : name.slice(0, -unit.length))
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase();
  return unit === undefined ? words : `${words}, ${UNITS[unit]}`;
};

/** How sure a figure is, as the instructor reads it. */
const SURE: Readonly<Record<Limit['sure'], string>> = {
  seen: 'read in the source',
  quoted: 'quoted by another source',
  memory: 'from memory',
  practice: 'common practice',
  own: 'entered by you',
};
const UNSURE: ReadonlySet<Limit['sure']> = new Set(['memory', 'practice']);

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
  const names = (Object.keys(set) as (keyof typeof set)[]).filter(
    (name): name is LimitName => name !== 'id' && name !== 'title',
  );
  const own = draft.ownLimits[id] ?? {};
  const change = (name: LimitName, side: 'below' | 'above', text: string) => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value) || value < 0) {
      const sentence = `${limitWords(name)}, ${side} must be a number from 0, was "${text}"; the limit stays ${set[name][side]}.`;
      setWrong({ field: `${name}-${side}`, sentence });
      return;
    }
    setWrong(null);
    const { below, above } = set[name];
    const limit = { below, above, [side]: value };
    onChange({ ownLimits: { ...draft.ownLimits, [id]: { ...own, [name]: limit } } });
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
            {names.map((name) => (
              <tr key={`${id}-${name}`}>
                <th scope="row">{limitWords(name)}</th>
                {(['below', 'above'] as const).map((side) => (
                  <td key={`${side}-${own[name] === undefined}`}>
                    <input
                      aria-label={`${limitWords(name)}, ${side}`}
                      inputMode="decimal"
                      defaultValue={String(set[name][side])}
                      aria-invalid={wrong?.field === `${name}-${side}`}
                      aria-describedby="limit-wrong"
                      onBlur={(e) => {
                        if (e.target.value !== String(set[name][side])) change(name, side, e.target.value);
                        else if (wrong?.field === `${name}-${side}`) setWrong(null);
                      }}
                    />
                  </td>
                ))}
                <td className={UNSURE.has(set[name].sure) ? 'unsure' : ''}>{SURE[set[name].sure]}</td>
                <td className="soft">{set[name].source}</td>
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
