import { deviceOutbox } from './device-outbox';
import { listenToTabs } from './outbox-channel';
import type { OutboxEntry } from './outbox-entry';

const nothing: readonly OutboxEntry[] = [];
let seen: readonly OutboxEntry[] = nothing;
let isRead = false;
const listeners = new Set<() => void>();
let stopListening: (() => void) | null = null;

async function readAgain(): Promise<void> {
  seen = await deviceOutbox.all().catch(() => seen);
  isRead = true;
  for (const listener of listeners) listener();
}

/** The outbox as this tab sees it, kept in step with the device and its other tabs. */
export const outboxView = {
  subscribe: (listener: () => void): (() => void) => {
    listeners.add(listener);
    stopListening ??= listenToTabs((message) => {
      if (message === 'outbox') void readAgain();
    });
    if (!isRead) void readAgain();
    return () => listeners.delete(listener);
  },
  entries: (): readonly OutboxEntry[] => seen,
  onServer: (): readonly OutboxEntry[] => nothing,
  /** Reads the outbox now; resolves when screens have been told. */
  readAgain,
};
