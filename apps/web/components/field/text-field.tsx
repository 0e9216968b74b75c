'use client';

import type { HTMLInputAutoCompleteAttribute } from 'react';
import { Field, type FieldFacts } from './field';
import styles from './field.module.css';

interface TextFieldProps extends FieldFacts {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'email' | 'password' | 'tel' | 'search' | 'datetime-local';
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'none';
  readonly autoComplete?: HTMLInputAutoCompleteAttribute;
  readonly unit?: string | undefined;
  readonly required?: boolean;
  readonly lines?: number;
  readonly autoFocus?: boolean;
  readonly suggestions?: readonly string[];
  readonly onLeave?: () => void;
  readonly wide?: boolean;
  readonly upperCase?: boolean;
}

/** One line, or with `lines` a few, that a person types; the unit stands behind it. */
export function TextField(props: TextFieldProps) {
  const { label, hint, error, value, onChange, lines = 1, unit, suggestions = [], wide = false } = props;
  return (
    <Field label={label} hint={hint} error={error} wide={wide || lines > 1}>
      {(wiring) =>
        lines > 1 ? (
          <textarea
            {...wiring}
            className={styles.input}
            rows={lines}
            value={value}
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <span className={styles.line}>
            <input
              {...wiring}
              className={`${styles.input} ${props.upperCase === true ? styles.upper : ''}`}
              type={props.type ?? 'text'}
              inputMode={props.inputMode}
              autoComplete={props.autoComplete ?? 'off'}
              aria-required={props.required === true ? true : undefined}
              autoFocus={props.autoFocus}
              list={suggestions.length > 0 ? `${wiring.id}-list` : undefined}
              value={value}
              onChange={(event) => onChange(event.target.value)}
              onBlur={props.onLeave}
            />
            {unit === undefined ? null : <span className={styles.unit}>{unit}</span>}
            {suggestions.length === 0 ? null : (
              <datalist id={`${wiring.id}-list`}>
                {suggestions.map((one) => (
                  <option key={one} value={one} />
                ))}
              </datalist>
            )}
          </span>
        )
      }
    </Field>
  );
}
