'use client';

import type { Car, EngineInput, EngineSheet } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../../../components/button/button';
import { Dialog } from '../../../../../../components/dialog/dialog';
import { Skeleton, Tag } from '../../../../../../components/marks/marks';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import styles from './engine.module.css';

const EngineForm = dynamic(() => import('./engine-form').then((part) => part.EngineForm), {
  loading: () => <Skeleton lines={8} label="Opening the engine data" />,
});

const bases = {
  entered: { shape: '●', word: 'entered' },
  assumed: { shape: '○', word: 'assumed' },
  missing: { shape: '–', word: 'missing' },
} as const;

/** What all of it rests on: entered, assumed, or missing. */
export function InputsPart({ sheet, car }: Readonly<{ sheet: EngineSheet; car: Car }>) {
  const units = useUnits();
  const [isOpen, setOpen] = useState(false);
  const count = (basis: EngineInput['basis']) => sheet.inputs.filter((one) => one.basis === basis).length;
  return (
    <section className="sheet stack" aria-labelledby="inputs">
      <h2 id="inputs">What this rests on</h2>
      <p>
        {count('entered')} entered, {count('assumed')} assumed, {count('missing')} missing. What is assumed is
        usual for a boosted petrol engine, no more: enter what this one has.
      </p>
      <p>
        <Button kind="act" onClick={() => setOpen(true)}>
          Enter engine data
        </Button>
      </p>
      <details className={styles.all}>
        <summary>Show all {sheet.inputs.length}</summary>
        <ul className={styles.lines}>
          {sheet.inputs.map((input) => (
            <li key={input.key}>
              <span className="grow">{input.name}</span>
              <span className={styles.figure}>{sayInput(input, units)}</span>
              <Tag shape={bases[input.basis].shape}>{bases[input.basis].word}</Tag>
            </li>
          ))}
        </ul>
      </details>
      {isOpen ? (
        <Dialog title="Engine data" onClose={() => setOpen(false)} wide>
          <EngineForm car={car} inputs={sheet.inputs} onDone={() => setOpen(false)} />
        </Dialog>
      ) : null}
    </section>
  );
}

function sayInput({ value, unit }: EngineInput, units: PersonsUnits): string {
  if (value === null) return '';
  if (unit === 'kPa') return units.write(value);
  if (unit === '°C') return units.writeTemperature(value);
  return unit === '' ? String(value) : `${value} ${unit}`;
}
