'use client';

import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import type { Draft } from '../../../../components/form/use-draft';
import { useUnits } from '../../../../components/units/use-units';
import { faultsOfWanted, type IntakeValues, type WantedDraft } from './intake-draft';
import styles from './intake.module.css';

interface WantedPartProps {
  readonly draft: Draft<IntakeValues>;
  readonly wanted: readonly WantedDraft[];
  readonly onWanted: (wanted: readonly WantedDraft[]) => void;
}

/** What the customer wants, in their words and as presets. The ceiling is agreed later, by a tuner. */
export function WantedPart({ draft, wanted, onWanted }: WantedPartProps) {
  const units = useUnits();
  const change = (key: number, part: Partial<WantedDraft>) =>
    onWanted(wanted.map((row) => (row.key === key ? { ...row, ...part } : row)));
  const nextKey = Math.max(0, ...wanted.map((row) => row.key)) + 1;
  return (
    <section className="sheet stack" aria-labelledby="wanted">
      <h2 id="wanted">What they want</h2>
      <TextField label="Wishes" lines={3} hint="In the customer’s words." {...draft.bind('visit.wishes')} />
      <h3>Presets wanted</h3>
      {wanted.map((row, index) => {
        const faults = faultsOfWanted(draft.faults, index);
        return (
          <fieldset key={row.key} className={styles.wanted}>
            <legend className="unseen">Preset {index + 1}</legend>
            <TextField
              label={`Preset ${index + 1}, name`}
              hint="Such as: everyday, road tyres, wet"
              value={row.name}
              error={faults.name}
              onChange={(name) => change(row.key, { name })}
            />
            <TextField
              label="What it is for"
              value={row.purpose}
              onChange={(purpose) => change(row.key, { purpose })}
            />
            <TextField
              label={`Target boost wished, ${units.pressureWord}`}
              inputMode="decimal"
              unit={units.pressureWord}
              hint="Leave empty if the tuner is to propose it."
              value={row.target}
              error={faults.target}
              onChange={(target) => change(row.key, { target })}
            />
            {wanted.length > 1 ? (
              <Button
                kind="quiet"
                aria-label={`Remove preset ${index + 1}`}
                onClick={() => onWanted(wanted.filter((one) => one.key !== row.key))}
              >
                Remove
              </Button>
            ) : null}
          </fieldset>
        );
      })}
      <p>
        <Button onClick={() => onWanted([...wanted, { key: nextKey, name: '', purpose: '', target: '' }])}>
          Add a preset
        </Button>
      </p>
    </section>
  );
}
