'use client';

import { useId, type ReactNode } from 'react';
import styles from './field.module.css';

interface CheckFieldProps {
  readonly label: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabled?: boolean;
}

/** A box to tick, large enough for a glove. */
export function CheckField({ label, checked, onChange, disabled = false }: CheckFieldProps) {
  const id = useId();
  return (
    <div className={styles.check}>
      <input
        id={id}
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={(event) => onChange(event.target.checked)}
      />
      <label htmlFor={id}>{label}</label>
    </div>
  );
}
