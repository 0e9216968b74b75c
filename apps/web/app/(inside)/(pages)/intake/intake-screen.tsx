'use client';

import type { Intake } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { useDraft } from '../../../../components/form/use-draft';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { useIntake, useLookalikes } from '../../../../queries/visits/use-intake';
import { CarPart } from './car-part';
import { CustomerPart } from './customer-part';
import { emptyIntake, readIntake, type Chosen, type WantedDraft } from './intake-draft';
import { IntakeDone } from './intake-done';
import { useSettled } from '../../../../components/form/use-settled';
import { VisitPart } from './visit-part';
import { WantedPart } from './wanted-part';
import styles from './intake.module.css';

const nobody: Chosen = { customer: null, car: null };
const oneRow: readonly WantedDraft[] = [{ key: 0, name: '', purpose: '', target: '' }];

/** Get this customer and car in, now. */
export function IntakeScreen() {
  const units = useUnits();
  const draft = useDraft(emptyIntake);
  const [wanted, setWanted] = useState(oneRow);
  const [chosen, setChosen] = useState(nobody);
  const [done, setDone] = useState<{ intake: Intake; plate: string } | null>(null);
  const intake = useIntake();
  const lookalikes = useLookalikes(
    useSettled({
      name: chosen.customer === null ? draft.values['customer.name'] : '',
      phone: chosen.customer === null ? draft.values['customer.phone'] : '',
      email: chosen.customer === null ? draft.values['customer.email'] : '',
      plate: chosen.car === null ? draft.values['car.plate'] : '',
      vin: chosen.car === null ? draft.values['car.vin'] : '',
    }),
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readIntake(draft.values, wanted, chosen, units);
    if ('faults' in read) return draft.fail(read.faults);
    const plate = chosen.car?.plate ?? draft.values['car.plate'].trim().toUpperCase();
    return intake.mutate(read.data, {
      onSuccess: (made) => setDone({ intake: made, plate }),
      onError: draft.failFrom,
    });
  };
  const startOver = () => {
    draft.reset(emptyIntake);
    setWanted(oneRow);
    setChosen(nobody);
    setDone(null);
    intake.reset();
  };
  if (done !== null) return <IntakeDone intake={done.intake} plate={done.plate} onNext={startOver} />;
  const faultCount = Object.keys(draft.faults).length;
  return (
    <form onSubmit={submit} noValidate className={styles.page}>
      <h1>Take in a car</h1>
      <CustomerPart draft={draft} chosen={chosen} onChoose={setChosen} lookalikes={lookalikes.data} />
      <CarPart draft={draft} chosen={chosen} onChoose={setChosen} lookalikes={lookalikes.data} />
      <WantedPart draft={draft} wanted={wanted} onWanted={setWanted} />
      <VisitPart draft={draft} />
      <div className={styles.foot}>
        <ProblemNote error={intake.error} />
        {faultCount > 0 ? (
          <Mind>
            <p>
              {faultCount === 1 ? 'One field needs' : `${faultCount} fields need`} a second look. Nothing is
              lost.
            </p>
          </Mind>
        ) : null}
        <Button type="submit" kind="act" big busy={intake.isPending}>
          Take in this car
        </Button>
      </div>
    </form>
  );
}
