'use client';

import { useEffect, useState } from 'react';

const usualMs = 300;

/** The value once typing has paused, so that not every key asks the server. */
export function useSettled<T>(value: T, settleMs = usualMs): T {
  const [settled, setSettled] = useState(value);
  const text = JSON.stringify(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(JSON.parse(text) as T), settleMs);
    return () => clearTimeout(timer);
  }, [text, settleMs]);
  return settled;
}
