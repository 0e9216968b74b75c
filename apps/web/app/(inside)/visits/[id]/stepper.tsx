'use client';

import { useId, useRef, type FocusEvent } from 'react';
import { FieldError } from '../../../../components/field/field-error';
import styles from './visit.module.css';

interface StepperProps {
  readonly label: string;
  readonly value: string;
  /** Nobody has set it: the value follows the advice, and may change at any moment. */
  readonly follows: boolean;
  readonly step: number;
  readonly min: number;
  readonly max: number;
  readonly error: string | undefined;
  readonly onChange: (value: string) => void;
}

/** A figure that rarely changes: type it, or step it by the controller's grid. */
export function Stepper({ label, value, follows, step, min, max, error, onChange }: StepperProps) {
  const id = useId();
  const field = usePinned({ value, canPin: follows && error === undefined, onChange });
  const move = (by: number) => {
    const now = Number(value.replace(',', '.'));
    const from = value.trim() !== '' && Number.isFinite(now) ? now : min - by;
    onChange(String(Math.min(max, Math.max(min, Math.round((from + by) * 1000) / 1000))));
  };
  return (
    <div className={styles.stepper}>
      <label htmlFor={id}>{label}</label>
      <div>
        <button type="button" aria-label={`${label}: less`} onClick={() => move(-step)}>
          −
        </button>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={value}
          aria-invalid={error === undefined ? undefined : true}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
          onChange={(event) => onChange(event.target.value)}
          {...field}
        />
        <button type="button" aria-label={`${label}: more`} onClick={() => move(step)}>
          +
        </button>
      </div>
      <FieldError id={`${id}-error`} error={error} />
    </div>
  );
}

interface Pinned {
  readonly value: string;
  readonly canPin: boolean;
  readonly onChange: (value: string) => void;
}

/**
 * Holds a value that follows the advice still while somebody is in its field: advice that came in between two
 * keystrokes would mix with what is typed. Left untouched, it follows again.
 */
function usePinned({ value, canPin, onChange }: Pinned) {
  const pinned = useRef<string | null>(null);
  return {
    onFocus: () => {
      if (!canPin) return;
      pinned.current = value;
      onChange(value);
    },
    onBlur: (event: FocusEvent<HTMLInputElement>) => {
      if (event.target.value === pinned.current) onChange('');
      pinned.current = null;
    },
  };
}
