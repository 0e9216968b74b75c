'use client';

import type { Controller } from '@pullbook/contracts';
import type { Draft } from '../../../../components/form/use-draft';
import type { More, PadField } from '../../../../components/pull/more-values';
import { Readings } from './readings';
import { Stepper } from './stepper';
import styles from './visit.module.css';

interface MoreFiguresProps {
  readonly draft: Pick<Draft<More>, 'values' | 'faults' | 'set'>;
  readonly held: More;
  readonly isOverride: boolean;
  readonly controller: Controller | null;
  /** Whether settled boost and rise time stand beside the peak already. */
  readonly hasReadings: boolean;
  /** Told which figure the keypad is to type into. */
  readonly onPad: (field: PadField) => void;
}

/** Gate hold, correction strength, settled boost, rise time: what this controller has. */
export function MoreFigures(props: MoreFiguresProps) {
  const { draft, held, isOverride, controller, hasReadings, onPad } = props;
  return (
    <div className={styles.settings}>
      <Settings draft={draft} held={held} controller={controller} />
      {hasReadings ? null : (
        <details className={styles.more}>
          <summary>Settled boost and rise time</summary>
          <div className={styles.settings}>
            <Readings draft={draft} isOverride={isOverride} onPad={onPad} />
          </div>
        </details>
      )}
    </div>
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
