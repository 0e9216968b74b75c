'use client';

import { PresetChange, type Car, type Preset } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { useChangePreset } from '../../queries/presets/use-change-preset';
import { Button } from '../button/button';
import { readValues } from '../form/read-values';
import { useDraft } from '../form/use-draft';
import { ProblemNote } from '../marks/problem-note';
import { useUnits } from '../units/use-units';
import { GoalFields } from './goal-fields';

interface GoalFormProps {
  readonly preset: Preset;
  readonly car: Car;
  readonly onDone?: () => void;
}

/** Target, tolerance and ceiling of one preset. Without them nothing is advised. */
export function GoalForm({ preset, car, onDone }: GoalFormProps) {
  const units = useUnits();
  const change = useChangePreset();
  const draft = useDraft({
    targetKpa: units.toField(preset.targetKpa),
    toleranceKpa: units.toField(preset.toleranceKpa),
    ceilingKpa: units.toField(preset.ceilingKpa),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, PresetChange, (from) => ({
      targetKpa: from.kpaOrNull('targetKpa'),
      toleranceKpa: from.kpaOrNull('toleranceKpa'),
      ceilingKpa: from.kpaOrNull('ceilingKpa'),
      reason: 'Target and ceiling agreed',
    }));
    if ('faults' in read) return draft.fail(read.faults);
    const missing = Object.fromEntries(
      (['targetKpa', 'ceilingKpa'] as const).flatMap((name) =>
        typeof read.data[name] !== 'number' ? [[name, 'Fill this in: nothing is advised without it.']] : [],
      ),
    );
    if (Object.keys(missing).length > 0) return draft.fail(missing);
    return change.mutate(
      { preset, change: read.data },
      { onError: draft.failFrom, ...(onDone ? { onSuccess: onDone } : {}) },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="goal">
      <h2 id="goal">
        Agree target and ceiling of {preset.slot} {preset.name}
      </h2>
      {preset.purpose === '' ? null : <p className="soft">For: {preset.purpose}</p>}
      <GoalFields car={car} slot={preset.slot} draft={draft} />
      <ProblemNote error={change.error} />
      <Button type="submit" kind="act" big busy={change.isPending}>
        Agree target and ceiling
      </Button>
    </form>
  );
}
