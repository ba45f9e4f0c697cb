import { type ReactNode, useId } from 'react';

/** What a label and the words under a field are tied to it by. */
interface FieldIds {
  readonly id: string;
  readonly 'aria-describedby'?: string;
}

interface FieldProps {
  readonly label: string;
  readonly className?: string;
  /** Under the field; empty: its room is kept. */
  readonly hint?: string | undefined;
  /** Takes the hint's place while what stands there cannot be used. */
  readonly wrong?: string;
  readonly hidden?: boolean;
  readonly children: (ids: FieldIds) => ReactNode;
}

/** A label, what is typed or chosen, and a word about it: every form of the pages is made of these. */
export const Field = ({ label, className, hint, wrong = '', hidden = false, children }: FieldProps) => {
  const id = useId();
  if (hidden) return null;
  const says = `${id}-says`;
  return (
    <div className={className === undefined ? 'field' : `field ${className}`}>
      <label htmlFor={id}>{label}</label>
      {children(hint === undefined ? { id } : { id, 'aria-describedby': says })}
      {hint === undefined ? null : (
        <small id={says} className={wrong === '' ? '' : 'wrong'}>
          {wrong || hint}
        </small>
      )}
    </div>
  );
};

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
export const TextField = (props: TextProps) => {
  const { label, value, onChange, hint = '', numeric = true, placeholder } = props;
  const wrong = value.trim() === '' ? '' : (props.wrong ?? '');
  return (
    <Field label={label} hint={hint} wrong={wrong}>
      {(ids) => (
        <input
          {...ids}
          value={value}
          onChange={(event) => onChange(event.target.value)}
          inputMode={numeric ? 'decimal' : 'text'}
          autoComplete="off"
          spellCheck={false}
          placeholder={placeholder}
          aria-invalid={wrong !== ''}
        />
      )}
    </Field>
  );
};

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
  readonly hint?: string;
  readonly disabled?: boolean;
}

/** One of a few. */
export const ChoiceField = <T extends string>(props: ChoiceProps<T>) => {
  const { label, value, choices, onChange, hint, disabled = false } = props;
  return (
    <Field label={label} hint={hint}>
      {(ids) => (
        <select
          {...ids}
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.target.value as T)}
        >
          {choices.map(([each, text]) => (
            <option key={each} value={each}>
              {text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
};
