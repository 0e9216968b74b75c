'use client';

import type { ReactNode } from 'react';
import type { Draft } from '../../../../components/form/use-draft';
import type { More, PadField } from '../../../../components/pull/more-values';
import { useUnits } from '../../../../components/units/use-units';
import { PadFigure } from './pad-figure';
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
    <PadFigure
      label={label}
      className={styles.figure}
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
