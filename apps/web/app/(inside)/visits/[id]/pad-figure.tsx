'use client';

import { useId } from 'react';
import { FieldError } from '../../../../components/field/field-error';

interface PadFigureProps {
  readonly label: string;
  /** How large and where: a class of the visit screen. */
  readonly className: string | undefined;
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (value: string) => void;
  /** The keypad is to type into it from now on. */
  readonly onFocus: () => void;
}

/** A figure read off a gauge; a keyboard works as well as the keypad, the screen keyboard stays away. */
export function PadFigure({ label, className, value, error, onChange, onFocus }: PadFigureProps) {
  const id = useId();
  return (
    <div className={className}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={value}
        inputMode="none"
        autoComplete="off"
        placeholder="–"
        aria-invalid={error === undefined ? undefined : true}
        aria-describedby={error === undefined ? undefined : `${id}-error`}
        onChange={(event) => onChange(event.target.value)}
        onFocus={onFocus}
      />
      <FieldError id={`${id}-error`} error={error} />
    </div>
  );
}
