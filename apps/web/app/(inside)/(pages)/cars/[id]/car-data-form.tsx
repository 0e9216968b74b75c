'use client';

import { CarChange, type Car } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../../components/button/button';
import { TextField } from '../../../../../components/field/text-field';
import { readValues } from '../../../../../components/form/read-values';
import { useDraft } from '../../../../../components/form/use-draft';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../components/notices/notices';
import { useUnits } from '../../../../../components/units/use-units';
import { sayVin } from '../../../../../components/vin/say-vin';
import { useChangeCar } from '../../../../../queries/cars/use-change-car';

/** What the desk keeps up to date: plate, model, year, VIN, note. */
export function CarDataForm({ car }: Readonly<{ car: Car }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeCar();
  const draft = useDraft({
    plate: car.plate,
    model: car.model,
    modelYear: car.modelYear === null ? '' : String(car.modelYear),
    vin: car.vin ?? '',
    note: car.note,
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CarChange, (from) => ({
      plate: from.text('plate').toUpperCase(),
      model: from.text('model'),
      modelYear: from.numberOrNull('modelYear'),
      vin: from.textOrNull('vin'),
      note: from.text('note'),
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return change.mutate(
      { id: car.id, revision: car.revision, change: read.data },
      { onSuccess: () => notices.done('Car saved.'), onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="car-data">
      <h2 id="car-data">Car</h2>
      <div className="columns">
        <TextField label="Plate" upperCase {...draft.bind('plate')} />
        <TextField label="Model" {...draft.bind('model')} />
        <TextField label="Model year" inputMode="numeric" {...draft.bind('modelYear')} />
        <TextField label="VIN" upperCase hint={sayVin(draft.values.vin)} {...draft.bind('vin')} />
      </div>
      <TextField label="Note" lines={2} {...draft.bind('note')} />
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save car
        </Button>
      </p>
    </form>
  );
}
