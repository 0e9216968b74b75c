import { deviceDatabase } from './device-database';
import type { NewEntry, OutboxEntry, OutboxStore } from './outbox-entry';

/** On the disk before it is said to be written down: power may go at any moment. */
const strict = { durability: 'strict' } as const;

/** The outbox of this device, in IndexedDB; it outlives reload, killed tabs and loss of power. */
export const deviceOutbox: OutboxStore = {
  all: async () => (await (await deviceDatabase()).getAll('outbox')) as OutboxEntry[],
  add: async (entry: NewEntry) => {
    const transaction = (await deviceDatabase()).transaction('outbox', 'readwrite', strict);
    const waiting = { ...entry, state: 'waiting', refusal: null, answer: null, sentAt: null } as const;
    const order = await transaction.store.add(waiting as unknown as NewEntry);
    await transaction.done;
    return { ...waiting, order };
  },
  put: async (entry) => {
    const transaction = (await deviceDatabase()).transaction('outbox', 'readwrite', strict);
    await transaction.store.put(entry);
    await transaction.done;
  },
  remove: async (keys) => {
    const transaction = (await deviceDatabase()).transaction('outbox', 'readwrite', strict);
    for (const key of keys) {
      const order = await transaction.store.index('key').getKey(key);
      if (order !== undefined) await transaction.store.delete(order);
    }
    await transaction.done;
  },
};
