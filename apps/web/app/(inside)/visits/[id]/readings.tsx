'use client';

import { useId, type ReactNode } from 'react';
import { FieldError } from '../../../../components/field/field-error';
import type { Draft } from '../../../../components/form/use-draft';
import type { More, PadField } from '../../../../components/pull/more-values';
import { useUnits } from '../../../../components/units/use-units';
import styles from './visit.module.css';

type Reading = Exclude<PadField, 'peakKpa'>;

interface ReadingsProps {
  readonly draft: Pick<Draft<More>, 'values' | 'faults' | 'set'>;
  readonly isOverride: boolean;
  /** Told which figure the keypad is to type into. */
  readonly onPad: (field: PadField) => void;
}

/** What is read off beside the peak: settled boost, rise time and how long an override held. */
export function Readings({ draft, isOverride, onPad }: ReadingsProps) {
  const units = useUnits();
  const figure = (field: Reading, label: string) => (
    <Figure
      label={label}
      value={draft.values[field]}
      error={draft.faults[field]}
      onChange={(text) => draft.set({ [field]: text })}
      onFocus={() => onPad(field)}
    />
  );
  return (
    <>
      {figure('settledKpa', `Settled boost, ${units.pressureWord}`)}
      {figure('riseTimeS', 'Rise time, s')}
      {isOverride ? figure('heldForS', 'Override held, s') : null}
    </>
  );
}

interface ReadingsRowProps extends ReadingsProps {
  readonly peak: ReactNode;
}

/** The search for the gate hold asks for all readings: they stand in one row, so that the button stays in sight. */
export function ReadingsRow({ peak, ...readings }: ReadingsRowProps) {
  return (
    <div className={styles.readings}>
      {peak}
      <Readings {...readings} />
    </div>
  );
}

interface FigureProps {
  readonly label: string;
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (value: string) => void;
  readonly onFocus: () => void;
}

/** A figure read off a gauge: keyboard or keypad; the screen keyboard stays away. */
function Figure({ label, value, error, onChange, onFocus }: FigureProps) {
  const id = useId();
  return (
    <div className={styles.figure}>
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
