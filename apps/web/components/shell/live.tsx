'use client';

import { createContext, useContext, type ReactNode } from 'react';
import { useLiveChanges, type Line } from '../../queries/board/use-live-changes';

const LiveContext = createContext<Line>({ isLive: true, brokeAt: null });

/** Listens for changes of other devices once, for all screens inside. */
export function Live({ children }: Readonly<{ children: ReactNode }>) {
  return <LiveContext value={useLiveChanges()}>{children}</LiveContext>;
}

/** Whether the line for changes of other devices stands, and since when it does not. */
export const useLine = (): Line => useContext(LiveContext);
