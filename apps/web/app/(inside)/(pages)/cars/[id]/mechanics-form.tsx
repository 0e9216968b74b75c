'use client';

import { CarChange, type Car } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../../components/button/button';
import { ChoiceField } from '../../../../../components/field/choice-field';
import { TextField } from '../../../../../components/field/text-field';
import { readValues } from '../../../../../components/form/read-values';
import { useDraft } from '../../../../../components/form/use-draft';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../components/notices/notices';
import { useUnits } from '../../../../../components/units/use-units';
import { useChangeCar } from '../../../../../queries/cars/use-change-car';
import { useControllers } from '../../../../../queries/controllers/use-controllers';

const textOf = (value: string | number | null) => (value === null ? '' : String(value));

/** What the tuner knows of engine, turbo and controller; all of it may stay empty. */
export function MechanicsForm({ car }: Readonly<{ car: Car }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeCar();
  const controllers = useControllers().data ?? [];
  const { mechanics } = car;
  const draft = useDraft({
    controllerId: car.controllerId ?? '',
    buildCode: car.buildCode ?? '',
    'mechanics.engineCode': mechanics.engineCode ?? '',
    'mechanics.displacementL': textOf(mechanics.displacementL),
    'mechanics.cylinderCount': textOf(mechanics.cylinderCount),
    'mechanics.fuel': mechanics.fuel ?? '',
    'mechanics.turbo': mechanics.turbo ?? '',
    'mechanics.actuatorSpringKpa': units.toField(mechanics.actuatorSpringKpa),
    'mechanics.revLimitRpm': textOf(mechanics.revLimitRpm),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CarChange, (from) => ({
      controllerId: from.textOrNull('controllerId'),
      buildCode: from.textOrNull('buildCode'),
      mechanics: {
        ...mechanics,
        engineCode: from.textOrNull('mechanics.engineCode'),
        displacementL: from.numberOrNull('mechanics.displacementL'),
        cylinderCount: from.numberOrNull('mechanics.cylinderCount'),
        fuel: from.textOrNull('mechanics.fuel'),
        turbo: from.textOrNull('mechanics.turbo'),
        actuatorSpringKpa: from.kpaOrNull('mechanics.actuatorSpringKpa'),
        revLimitRpm: from.numberOrNull('mechanics.revLimitRpm'),
      },
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return change.mutate(
      { id: car.id, revision: car.revision, change: read.data },
      { onSuccess: () => notices.done('Controller and engine saved.'), onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="mechanics">
      <h2 id="mechanics">Controller and engine</h2>
      <div className="columns">
        <ChoiceField
          label="Controller"
          choices={[
            { value: '', label: 'not chosen yet' },
            ...controllers.map((one) => ({ value: one.id, label: one.name })),
          ]}
          {...draft.bind('controllerId')}
        />
        <TextField
          label="Build"
          hint="Cars of the same build learn from each other."
          {...draft.bind('buildCode')}
        />
        <TextField label="Engine code" {...draft.bind('mechanics.engineCode')} />
        <TextField
          label="Displacement, L"
          unit="L"
          inputMode="decimal"
          {...draft.bind('mechanics.displacementL')}
        />
        <TextField label="Cylinders" inputMode="numeric" {...draft.bind('mechanics.cylinderCount')} />
        <TextField label="Fuel" {...draft.bind('mechanics.fuel')} />
        <TextField label="Turbo" {...draft.bind('mechanics.turbo')} />
        <TextField
          label={`Base boost by the spring, ${units.pressureWord}`}
          unit={units.pressureWord}
          inputMode="decimal"
          hint="Peak with the solenoid idle."
          {...draft.bind('mechanics.actuatorSpringKpa')}
        />
        <TextField
          label="Rev limit, r/min"
          unit="r/min"
          inputMode="numeric"
          {...draft.bind('mechanics.revLimitRpm')}
        />
      </div>
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save controller and engine
        </Button>
      </p>
    </form>
  );
}
