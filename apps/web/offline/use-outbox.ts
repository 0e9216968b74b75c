'use client';

import { useSyncExternalStore } from 'react';
import type { OutboxEntry } from './outbox-entry';
import { unsentOf } from './outbox-order';
import { outboxView } from './outbox-view';
import { listenToProgress, progressOf } from './upload-progress';

/** Everything in this device's outbox, sent entries of the last day among them. */
export const useOutbox = (): readonly OutboxEntry[] =>
  useSyncExternalStore(outboxView.subscribe, outboxView.entries, outboxView.onServer);

/** What this device has not sent yet, whoever wrote it. */
export const useUnsent = (): readonly OutboxEntry[] => unsentOf(useOutbox());

/** How much of an entry's file has gone out, 0 to 1; null while this tab sends none of it. */
export const useUploadProgress = (key: string): number | null =>
  useSyncExternalStore(
    listenToProgress,
    () => progressOf(key),
    () => null,
  );
