'use client';

import type { PracticeOrder } from '@pullbook/practice-car';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import { levels } from './levels';
import { anyOrder, mostNumber, readNumber } from './read-order';
import styles from './practice.module.css';

/** How hard it shall be; and which car, for those who all want the same one. */
export function ChooseCar({ onChoose }: Readonly<{ onChoose: (order: PracticeOrder) => void }>) {
  const [level, setLevel] = useState(levels[0]?.level ?? 'calm');
  const [typed, setTyped] = useState('');
  const [error, setError] = useState<string | undefined>();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (typed.trim() === '') return onChoose(anyOrder(level));
    const number = readNumber(typed);
    if (number === null) return setError(`A whole number from 1 to ${mostNumber}, or nothing at all.`);
    return onChoose({ level, number });
  };
  return (
    <form className={styles.choose} onSubmit={submit} noValidate>
      <div className="stack">
        <h1>Practice</h1>
        <p className={styles.lead}>
          Find the duty that makes the target, pull by pull, without passing the ceiling, on a car that cannot
          break. At the end you are told what it was all along.
        </p>
      </div>
      <fieldset className={styles.levels}>
        <legend>Which kind of car?</legend>
        {levels.map((one) => (
          <label key={one.level} className={styles.level}>
            <input
              type="radio"
              name="level"
              value={one.level}
              checked={one.level === level}
              onChange={() => setLevel(one.level)}
            />
            <span>
              <b>{one.name}</b>
              <span className="soft">{one.about}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <div className={`sheet ${styles.numberRow}`}>
        <TextField
          label="Number of the car"
          inputMode="numeric"
          hint="Leave it empty for any. The same kind and number are the same car for everybody."
          error={error}
          value={typed}
          onChange={(value) => {
            setTyped(value);
            setError(undefined);
          }}
        />
        <Button type="submit" kind="act" big>
          Take this car
        </Button>
      </div>
    </form>
  );
}
