import { useId } from 'react';

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly wrong: string | undefined;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  readonly numeric?: boolean;
  readonly placeholder?: string;
}

/** A field whose sentence stands under it while it cannot be used; an untouched empty field says nothing. */
export const TextField = ({
  label,
  value,
  wrong,
  onChange,
  hint,
  numeric = true,
  placeholder,
}: TextProps) => {
  const id = useId();
  const bad = wrong !== undefined && value.trim() !== '';
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        inputMode={numeric ? 'decimal' : 'text'}
        autoComplete="off"
        spellCheck={false}
        placeholder={placeholder}
        aria-invalid={bad}
        aria-describedby={`${id}-says`}
      />
      <small id={`${id}-says`} className={bad ? 'wrong' : ''}>
        {bad ? wrong : hint}
      </small>
    </div>
  );
};

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

export const ChoiceField = <T extends string>({ label, value, choices, onChange }: ChoiceProps<T>) => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value as T)}>
        {choices.map(([each, text]) => (
          <option key={each} value={each}>
            {text}
          </option>
        ))}
      </select>
    </div>
  );
};
