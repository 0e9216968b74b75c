import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { NewEntry, OutboxEntry } from './outbox-entry';

/** An answer of the server as it was read last, for when it cannot be asked. */
export interface KeptAnswer {
  readonly hash: string;
  readonly queryKey: readonly unknown[];
  readonly data: unknown;
  readonly updatedAt: number;
  /** Build of the dashboard that read it: another one may read other things. */
  readonly build: string;
}

interface DeviceSchema extends DBSchema {
  outbox: { key: number; value: OutboxEntry | NewEntry; indexes: { key: string } };
  answers: { key: string; value: KeptAnswer };
}

export type DeviceDatabase = IDBPDatabase<DeviceSchema>;

let opened: Promise<DeviceDatabase> | null = null;

/** The dashboard's own database on this device. */
export function deviceDatabase(): Promise<DeviceDatabase> {
  opened ??= openDB<DeviceSchema>('pullbook', 1, {
    upgrade: (database) => {
      const outbox = database.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true });
      outbox.createIndex('key', 'key', { unique: true });
      database.createObjectStore('answers', { keyPath: 'hash' });
    },
    terminated: () => {
      opened = null;
    },
  }).catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}
