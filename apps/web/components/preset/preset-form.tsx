'use client';

import { PresetNew, type Car, type Preset } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { useControllers } from '../../queries/controllers/use-controllers';
import { useCreatePreset } from '../../queries/presets/use-create-preset';
import { Button } from '../button/button';
import { ChoiceField } from '../field/choice-field';
import { TextField } from '../field/text-field';
import { readValues } from '../form/read-values';
import { useDraft } from '../form/use-draft';
import { ProblemNote } from '../marks/problem-note';
import { useUnits } from '../units/use-units';
import { GoalFields } from './goal-fields';

interface PresetFormProps {
  readonly car: Car;
  readonly presets: readonly Preset[];
  readonly onDone: (preset: Preset) => void;
  readonly onCancel?: () => void;
}

/** A new preset: what it is for, its slot, its goal. */
export function PresetForm({ car, presets, onDone, onCancel }: PresetFormProps) {
  const units = useUnits();
  const create = useCreatePreset(car.id);
  const controller = useControllers().data?.find((one) => one.id === car.controllerId);
  const freeSlot = firstFree(presets.map((one) => one.slot));
  const holderOf = (slot: number) => presets.find((one) => one.slot === slot);
  const draft = useDraft({
    name: '',
    purpose: '',
    slot: String(freeSlot),
    kind: 'standing',
    holdSeconds: '',
    targetKpa: '',
    toleranceKpa: units.toField(4),
    ceilingKpa: '',
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, PresetNew, (from) => ({
      name: from.text('name'),
      purpose: from.text('purpose'),
      slot: from.numberOrNull('slot'),
      kind: from.text('kind'),
      holdSeconds: draft.values.kind === 'timed-override' ? from.numberOrNull('holdSeconds') : null,
      targetKpa: from.kpaOrNull('targetKpa'),
      toleranceKpa: from.kpaOrNull('toleranceKpa'),
      ceilingKpa: from.kpaOrNull('ceilingKpa'),
    }));
    if ('faults' in read) draft.fail(read.faults);
    else create.mutate(read.data, { onSuccess: onDone, onError: draft.failFrom });
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="new-preset">
      <h2 id="new-preset">New preset for {car.plate}</h2>
      <div className="columns">
        <TextField label="Name" required hint="Such as: everyday, road tyres, wet" {...draft.bind('name')} />
        <TextField
          label="Slot"
          inputMode="numeric"
          hint={sayHolder(holderOf(Number(draft.values.slot)))}
          {...draft.bind('slot')}
        />
        {controller?.hasTimedOverride === true ? (
          <ChoiceField
            label="Kind"
            choices={[
              { value: 'standing', label: 'standing preset' },
              { value: 'timed-override', label: 'timed override' },
            ]}
            {...draft.bind('kind')}
          />
        ) : null}
        {draft.values.kind === 'timed-override' ? (
          <TextField label="Holds for, s" unit="s" inputMode="decimal" {...draft.bind('holdSeconds')} />
        ) : null}
      </div>
      <TextField label="What it is for" hint="Fuel, tyres, weather, driver." {...draft.bind('purpose')} />
      <GoalFields car={car} slot={Number(draft.values.slot)} draft={draft} />
      <ProblemNote error={create.error} />
      <div className="row">
        <Button type="submit" kind="act" big busy={create.isPending}>
          Add this preset
        </Button>
        {onCancel === undefined ? null : <Button onClick={onCancel}>Not now</Button>}
      </div>
    </form>
  );
}

/** Nothing for a free slot. */
const sayHolder = (holder: Preset | undefined): string | undefined =>
  holder === undefined ? undefined : `Holds ${holder.name}, which this one would replace.`;

function firstFree(taken: readonly number[]): number {
  let slot = 1;
  while (taken.includes(slot)) slot += 1;
  return slot;
}
