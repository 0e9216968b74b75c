'use client';

import { Field, type FieldFacts } from './field';
import styles from './field.module.css';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface ChoiceFieldProps extends FieldFacts {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly choices: readonly Choice[];
}

/** One of a short list. */
export function ChoiceField({ label, hint, error, value, onChange, choices }: ChoiceFieldProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => (
        <select
          {...wiring}
          className={styles.input}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
