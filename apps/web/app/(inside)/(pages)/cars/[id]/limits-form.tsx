'use client';

import { CarChange, type Car, type CarLimits } from '@pullbook/contracts';
import Link from 'next/link';
import type { FormEvent } from 'react';
import { Button } from '../../../../../components/button/button';
import { TextField } from '../../../../../components/field/text-field';
import { readValues } from '../../../../../components/form/read-values';
import { useDraft } from '../../../../../components/form/use-draft';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../components/notices/notices';
import { limitNames } from '../../../../../components/preset/ceiling-hint';
import { useCeilingHint } from '../../../../../components/preset/use-ceiling-hint';
import { useUnits } from '../../../../../components/units/use-units';
import { useChangeCar } from '../../../../../queries/cars/use-change-car';
import styles from './car.module.css';

interface LimitsFormProps {
  readonly car: Car;
  readonly mayTune: boolean;
}

const keys = Object.keys(limitNames) as (keyof CarLimits)[];

/** The limits of the car and which of them binds every ceiling. The desk reads them. */
export function LimitsForm({ car, mayTune }: LimitsFormProps) {
  const units = useUnits();
  const ceilingHint = useCeilingHint(car, units);
  return (
    <section className="sheet stack" aria-labelledby="limits">
      <h2 id="limits">Limits</h2>
      <p className={styles.binding}>{ceilingHint} No ceiling may stand above it.</p>
      {mayTune ? (
        <p>
          <Link href={`/cars/${car.id}/engine`}>Engine, injectors and compressor map</Link>: what else may
          bind, and what boost does there.
        </p>
      ) : null}
      {mayTune ? (
        <LimitsFields car={car} />
      ) : (
        <dl className={styles.facts}>
          {keys.map((key) => (
            <div key={key}>
              <dt>{limitNames[key]}</dt>
              <dd>{car.limits[key] === null ? 'not known' : units.write(car.limits[key])}</dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

function LimitsFields({ car }: Readonly<{ car: Car }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeCar();
  const draft = useDraft(
    Object.fromEntries(keys.map((key) => [`limits.${key}`, units.toField(car.limits[key])])) as Record<
      string,
      string
    >,
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CarChange, (from) => ({
      limits: Object.fromEntries(keys.map((key) => [key, from.kpaOrNull(`limits.${key}`)])),
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return change.mutate(
      { id: car.id, revision: car.revision, change: read.data },
      { onSuccess: () => notices.done('Limits saved.'), onError: draft.failFrom },
    );
  };
  const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return (
    <form onSubmit={submit} noValidate className="stack">
      <div className="columns">
        {keys.map((key) => (
          <TextField
            key={key}
            label={`${capital(limitNames[key])}, ${units.pressureWord}`}
            unit={units.pressureWord}
            inputMode="decimal"
            {...draft.bind(`limits.${key}`)}
          />
        ))}
      </div>
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save limits
        </Button>
      </p>
    </form>
  );
}
