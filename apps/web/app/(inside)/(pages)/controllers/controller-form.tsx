'use client';

import type { Controller } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import { useDraft, type Draft, type Values } from '../../../../components/form/use-draft';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useUnits } from '../../../../components/units/use-units';
import { useChangeController, useCreateController } from '../../../../queries/controllers/use-controllers';
import { controllerText, readController } from './controller-draft';
import styles from './controllers.module.css';

interface ControllerFormProps {
  readonly controller: Controller | null;
  readonly onDone: () => void;
}

const noYes = [
  { value: 'no', label: 'no' },
  { value: 'yes', label: 'yes' },
];

/** Describes a kind of controller by what can be set on it. */
export function ControllerForm({ controller, onDone }: ControllerFormProps) {
  const units = useUnits();
  const notices = useNotices();
  const create = useCreateController();
  const change = useChangeController();
  const draft = useDraft<Values>(controllerText(controller));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readController(draft.values, units);
    if ('faults' in read) return draft.fail(read.faults);
    const then = {
      onSuccess: () => {
        notices.done(`${read.data.name} is described.`);
        onDone();
      },
      onError: draft.failFrom,
    };
    return controller === null
      ? create.mutate(read.data, then)
      : change.mutate({ id: controller.id, revision: controller.revision, change: read.data }, then);
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      <div className="columns">
        <TextField label="Name" required hint="Such as: four-slot open-loop box" {...draft.bind('name')} />
        <TextField label="Preset slots" inputMode="numeric" {...draft.bind('presetSlots')} />
        <ChoiceField label="Timed override slot" choices={noYes} {...draft.bind('hasTimedOverride')} />
        <ChoiceField
          label="Loop"
          choices={[
            { value: 'open', label: 'open: duty as set' },
            { value: 'closed', label: 'closed: corrects itself' },
          ]}
          {...draft.bind('loop')}
        />
      </div>
      <RangeFields title="Duty, %" name="dutyPct" draft={draft} />
      <ChoiceField label="Gate hold can be set" choices={noYes} {...draft.bind('canHold')} />
      {draft.values['canHold'] === 'yes' ? (
        <RangeFields title="Gate hold, % of target" name="holdPct" draft={draft} />
      ) : null}
      <ChoiceField label="Correction strength can be set" choices={noYes} {...draft.bind('canCorrect')} />
      {draft.values['canCorrect'] === 'yes' ? (
        <RangeFields title="Correction strength" name="correction" draft={draft} />
      ) : null}
      <TextField label="Note" lines={2} {...draft.bind('note')} />
      <ProblemNote error={create.error ?? change.error} />
      <Button type="submit" kind="act" big busy={create.isPending || change.isPending}>
        Save controller
      </Button>
    </form>
  );
}

interface RangeFieldsProps {
  readonly title: string;
  readonly name: string;
  readonly draft: Draft<Values>;
}

function RangeFields({ title, name, draft }: RangeFieldsProps) {
  return (
    <fieldset className={styles.range}>
      <legend>{title}</legend>
      <TextField label="Lowest" inputMode="decimal" {...draft.bind(`${name}.min`)} />
      <TextField label="Highest" inputMode="decimal" {...draft.bind(`${name}.max`)} />
      <TextField label="Step" inputMode="decimal" {...draft.bind(`${name}.step`)} />
      {draft.faults[name] === undefined ? null : <p className={styles.fault}>▲ {draft.faults[name]}</p>}
    </fieldset>
  );
}
