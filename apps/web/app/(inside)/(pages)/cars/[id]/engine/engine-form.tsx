'use client';

import { CarChange, type AirAndFuel, type Car, type EngineInput } from '@pullbook/contracts';
import { convertTemperature } from '@pullbook/tuning-math';
import type { FormEvent } from 'react';
import { Button } from '../../../../../../components/button/button';
import { TextField } from '../../../../../../components/field/text-field';
import { readValues } from '../../../../../../components/form/read-values';
import { useDraft, type Draft } from '../../../../../../components/form/use-draft';
import { ProblemNote } from '../../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../../components/notices/notices';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import { useChangeCar } from '../../../../../../queries/cars/use-change-car';
import { engineFields, type EngineField } from './engine-fields';
import styles from './engine.module.css';

interface EngineFormProps {
  readonly car: Car;
  readonly inputs: readonly EngineInput[];
  readonly onDone: () => void;
}

/** Engine, air and fuel of a car; whatever stays empty is assumed, or missing. */
export function EngineForm({ car, inputs, onDone }: EngineFormProps) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeCar();
  const fields = engineFields.flatMap((group) => group.fields);
  const draft = useDraft(
    Object.fromEntries(fields.map((field) => [pathOf(field), toField(valueOf(car, field), field, units)])),
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CarChange, (from) => {
      const reading = (field: EngineField) => {
        if (field.kind === 'kpa') return from.kpaOrNull(pathOf(field));
        return field.kind === 'celsius'
          ? from.celsiusOrNull(pathOf(field))
          : from.numberOrNull(pathOf(field));
      };
      const typed = Object.fromEntries(fields.map((field) => [field.key, reading(field)]));
      const { displacementL, revLimitRpm, ...airAndFuel } = typed;
      return { mechanics: { ...car.mechanics, displacementL, revLimitRpm, airAndFuel } };
    });
    if ('faults' in read) return draft.fail(read.faults);
    const done = () => {
      notices.done('Engine data saved.');
      onDone();
    };
    return change.mutate(
      { id: car.id, revision: car.revision, change: read.data },
      { onSuccess: done, onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      {engineFields.map((group) => (
        <fieldset key={group.name} className="stack">
          <legend className={styles.legend}>{group.name}</legend>
          <div className="columns">
            {group.fields.map((field) => (
              <EngineTextField key={field.key} field={field} inputs={inputs} draft={draft} units={units} />
            ))}
          </div>
        </fieldset>
      ))}
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" kind="act" busy={change.isPending}>
          Save engine data
        </Button>
      </p>
    </form>
  );
}

interface EngineTextFieldProps {
  readonly field: EngineField;
  readonly inputs: readonly EngineInput[];
  readonly draft: Draft<Record<string, string>>;
  readonly units: PersonsUnits;
}

function EngineTextField({ field, inputs, draft, units }: EngineTextFieldProps) {
  const input = inputs.find(({ key }) => key === field.key);
  const unit = unitOf(field, units);
  const assumed =
    input?.basis === 'assumed' ? `Assumed ${toField(input.value, field, units)} now.` : undefined;
  const hint = [field.hint, assumed].filter((one) => one !== undefined).join(' ');
  return (
    <TextField
      label={unit === undefined ? field.label : `${field.label}, ${unit}`}
      unit={unit}
      inputMode="decimal"
      hint={hint === '' ? undefined : hint}
      {...draft.bind(pathOf(field))}
    />
  );
}

function unitOf({ kind, unit }: EngineField, units: PersonsUnits): string | undefined {
  if (kind === 'kpa') return units.pressureWord;
  return kind === 'celsius' ? units.temperatureWord : unit;
}

const pathOf = ({ key }: EngineField) =>
  key === 'displacementL' || key === 'revLimitRpm' ? `mechanics.${key}` : `mechanics.airAndFuel.${key}`;

function valueOf({ mechanics }: Car, { key }: EngineField): number | null {
  if (key === 'displacementL' || key === 'revLimitRpm') return mechanics[key];
  return mechanics.airAndFuel[key satisfies keyof AirAndFuel];
}

function toField(value: number | null, { kind }: EngineField, units: PersonsUnits): string {
  if (value === null) return '';
  if (kind === 'kpa') return units.toField(value);
  if (kind !== 'celsius') return String(value);
  return String(Math.round(convertTemperature(value, 'C', units.temperature) * 10) / 10);
}
