'use client';

import styles from './visit.module.css';

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0'];

interface KeypadProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** Ten digits for gloves. */
export function Keypad({ value, onChange }: KeypadProps) {
  return (
    <div className={styles.pad} role="group" aria-label="Keypad">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          aria-label={key === '.' ? 'Decimal point' : key}
          onClick={() => onChange(`${value}${key}`)}
        >
          {key}
        </button>
      ))}
      <button type="button" aria-label="Delete last figure" onClick={() => onChange(value.slice(0, -1))}>
        ⌫
      </button>
    </div>
  );
}
