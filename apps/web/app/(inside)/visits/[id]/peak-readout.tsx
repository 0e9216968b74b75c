'use client';

import { useId } from 'react';
import { FieldError } from '../../../../components/field/field-error';
import styles from './visit.module.css';

interface PeakReadoutProps {
  readonly unit: string;
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (value: string) => void;
}

/** The peak being typed, in large figures; a keyboard works as well as the keypad, the screen keyboard stays away. */
export function PeakReadout({ unit, value, error, onChange }: PeakReadoutProps) {
  const id = useId();
  return (
    <div className={`sheet ${styles.readout}`}>
      <label htmlFor={id}>Recorded peak, {unit}</label>
      <input
        id={id}
        value={value}
        inputMode="none"
        autoComplete="off"
        placeholder="–"
        aria-invalid={error === undefined ? undefined : true}
        aria-describedby={error === undefined ? undefined : `${id}-error`}
        onChange={(event) => onChange(event.target.value)}
      />
      <FieldError id={`${id}-error`} error={error} />
    </div>
  );
}
