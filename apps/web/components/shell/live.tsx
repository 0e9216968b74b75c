'use client';

import { createContext, useContext, type ReactNode } from 'react';
import { useLiveChanges } from '../../queries/board/use-live-changes';

const LiveContext = createContext(true);

/** Listens for changes of other devices once, for all screens inside. */
export function Live({ children }: Readonly<{ children: ReactNode }>) {
  return <LiveContext value={useLiveChanges()}>{children}</LiveContext>;
}

/** Whether the line for changes of other devices stands. */
export const useLive = (): boolean => useContext(LiveContext);
