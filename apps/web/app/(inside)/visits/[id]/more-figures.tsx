'use client';

import type { Controller, Preset } from '@pullbook/contracts';
import { useId, type ReactNode } from 'react';
import { CheckField } from '../../../../components/field/check-field';
import { FieldError } from '../../../../components/field/field-error';
import type { Draft } from '../../../../components/form/use-draft';
import { useUnits } from '../../../../components/units/use-units';
import type { More, PadField } from '../../../../components/pull/more-values';
import { Stepper } from './stepper';
import styles from './visit.module.css';

interface MoreFiguresProps {
  readonly draft: Pick<Draft<More>, 'values' | 'faults' | 'set'>;
  readonly held: More;
  readonly preset: Preset;
  readonly controller: Controller | null;
  /** Told which figure the keypad is to type into. */
  readonly onPad: (field: PadField) => void;
}

/** Gate hold, correction strength, settled boost, rise time, override: what this controller and preset have. */
export function MoreFigures({ draft, held, preset, controller, onPad }: MoreFiguresProps) {
  const units = useUnits();
  const isOverride = preset.kind === 'timed-override';
  const figure = (field: Exclude<PadField, 'peakKpa'>, label: string) => (
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
      {isOverride ? (
        <CheckField
          label="Timed override was on"
          checked={draft.values.overrideOff !== 'yes'}
          onChange={(isOn) => draft.set({ overrideOff: isOn ? '' : 'yes' })}
        />
      ) : null}
      <div className={styles.settings}>
        <Settings draft={draft} held={held} controller={controller} />
        <Folded isOpen={isOverride || (preset.dutyPct !== null && (controller?.holdPct ?? null) !== null)}>
          <div className={styles.settings}>
            {figure('settledKpa', `Settled boost, ${units.pressureWord}`)}
            {figure('riseTimeS', 'Rise time, s')}
            {isOverride ? figure('heldForS', 'Override held, s') : null}
          </div>
        </Folded>
      </div>
    </>
  );
}

function Settings({ draft, held, controller }: Pick<MoreFiguresProps, 'draft' | 'held' | 'controller'>) {
  const range = controller?.holdPct ?? null;
  const correction = controller?.correction ?? null;
  if (range === null && correction === null) return null;
  return (
    <>
      {range === null ? null : (
        <Stepper
          label="Gate hold, %"
          value={held.holdPct}
          follows={draft.values.holdPct === ''}
          {...range}
          error={draft.faults['holdPct']}
          onChange={(holdPct) => draft.set({ holdPct })}
        />
      )}
      {correction === null ? null : (
        <Stepper
          label="Correction strength"
          value={held.correctionStrength}
          follows={draft.values.correctionStrength === ''}
          {...correction}
          error={draft.faults['correctionStrength']}
          onChange={(correctionStrength) => draft.set({ correctionStrength })}
        />
      )}
    </>
  );
}

/** Folded away until the search for the gate hold needs it. */
function Folded({ isOpen, children }: Readonly<{ isOpen: boolean; children: ReactNode }>) {
  return (
    <details className={styles.more} open={isOpen}>
      <summary>Settled boost and rise time</summary>
      {children}
    </details>
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
