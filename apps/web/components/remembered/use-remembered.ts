'use client';

import { useState } from 'react';

/** A small choice that this device remembers, such as lanes or table; only for parts that render in the browser. */
export function useRemembered<T extends string>(
  name: string,
  allowed: readonly T[],
  first: T,
): [T, (value: T) => void] {
  const [value, setValue] = useState<T>(() => {
    const held = readRemembered(name);
    return allowed.find((one) => one === held) ?? first;
  });
  return [
    value,
    (next) => {
      setValue(next);
      hold(`pullbook-${name}`, next);
    },
  ];
}

/** What this device remembers of a choice, or null: for code that runs outside the screens. */
export const readRemembered = (name: string): string | null => readHeld(`pullbook-${name}`);

function readHeld(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

function hold(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch (cause) {
    console.warn('this browser keeps no settings; the choice holds until the page is closed', cause);
  }
}
