'use client';

import { useId, type ReactNode } from 'react';
import { FieldError } from './field-error';
import styles from './field.module.css';

export interface FieldFacts {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
}

interface FieldProps extends FieldFacts {
  readonly wide?: boolean;
  readonly children: (wiring: {
    id: string;
    'aria-describedby'?: string;
    'aria-invalid'?: true;
  }) => ReactNode;
}

/** A labelled place for one value, with its hint and, when it is wrong, what would be right. */
export function Field({ label, hint, error, wide = false, children }: FieldProps) {
  const id = useId();
  const noteIds = [hint === undefined ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`]
    .filter((one) => one !== '')
    .join(' ');
  return (
    <div className={`${styles.field} ${wide ? styles.wide : ''}`}>
      <label htmlFor={id}>{label}</label>
      {children({
        id,
        ...(noteIds === '' ? {} : { 'aria-describedby': noteIds }),
        ...(error === undefined ? {} : { 'aria-invalid': true as const }),
      })}
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      <FieldError id={`${id}-error`} error={error} />
    </div>
  );
}
