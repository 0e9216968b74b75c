'use client';

import { useEffect, useState } from 'react';

const settleMs = 300;

/** The value once typing has paused, so that not every key asks the server. */
export function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  const text = JSON.stringify(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(JSON.parse(text) as T), settleMs);
    return () => clearTimeout(timer);
  }, [text]);
  return settled;
}
