'use client';

import { useState } from 'react';
import { ProblemError } from '../../client/problem-error';
import { sentence } from './sentence';

export type Values = Readonly<Record<string, string>>;
export type Faults = Readonly<Record<string, string>>;

interface Bound {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly error: string | undefined;
}

export interface Draft<T extends Values> {
  readonly values: T;
  readonly faults: Faults;
  /** Value, setter and fault of one field, to spread onto it. */
  readonly bind: (name: keyof T & string) => Bound;
  readonly set: (changes: Partial<T>) => void;
  readonly fail: (faults: Faults) => void;
  /** Puts the fields that a refusal names next to their places; nothing that was typed is touched. */
  readonly failFrom: (error: Error) => void;
  readonly reset: (values: T) => void;
}

/** What a person is typing, kept as text until it is sent; fields are named by their path in the contract. */
export function useDraft<T extends Values>(initial: T): Draft<T> {
  const [values, setValues] = useState<T>(initial);
  const [faults, setFaults] = useState<Faults>({});
  const set = (changes: Partial<T>) => {
    setValues((old) => ({ ...old, ...changes }));
    setFaults((old) =>
      Object.fromEntries(Object.entries(old).filter(([name]) => !Object.hasOwn(changes, name))),
    );
  };
  const fail = (next: Faults) => {
    setFaults(next);
    focusFirstFault();
  };
  return {
    values,
    faults,
    set,
    fail,
    bind: (name) => ({
      value: values[name] ?? '',
      onChange: (value) => set({ [name]: value } as Partial<T>),
      error: faults[name],
    }),
    failFrom: (error) => {
      if (error instanceof ProblemError) fail(faultsOf(error));
    },
    reset: (next) => {
      setValues(next);
      setFaults({});
    },
  };
}

/** The refused fields by path: 'body.car.plate' and '/car/plate' both name `car.plate`. */
export function faultsOf(error: ProblemError): Faults {
  return Object.fromEntries(
    error.fields.map((one) => [
      one.field
        .replaceAll('/', '.')
        .replace(/^[.]/, '')
        .replace(/^body[.]/, ''),
      sentence(one.message),
    ]),
  );
}

function focusFirstFault(): void {
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  });
}
