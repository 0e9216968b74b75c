import type { Pull } from '@pullbook/contracts';
import type { OutboxEntry, OutboxStore } from './outbox-entry';

/** An entry for tests: a pull that waits in its turn. */
export function entryOf(order: number, change: Partial<OutboxEntry> = {}): OutboxEntry {
  return {
    order,
    key: `key-${order}`,
    memberId: 'me',
    visitId: 'visit',
    method: 'POST',
    path: '/tuning-sessions/session/pulls',
    body: { order },
    file: null,
    ifMatch: null,
    label: `Pull ${order}`,
    madeAt: '2026-03-02T10:00:00.000Z',
    shows: {},
    state: 'waiting',
    refusal: null,
    answer: null,
    sentAt: null,
    ...change,
  };
}

/** A pull for tests. */
export function pullOf(number: number, change: Partial<Pull> = {}): Pull {
  return {
    id: `pull-${number}`,
    tuningSessionId: 'session',
    presetId: 'preset',
    presetRevision: 1,
    number,
    dutyPct: 10 * number,
    peakKpa: 60 + number,
    usable: true,
    reasons: [],
    warnings: [],
    voidedAt: null,
    voidReason: null,
    foundSoundAt: null,
    foundSoundNote: null,
    foundSoundBy: null,
    recordedAt: `2026-03-02T10:0${number}:00.000Z`,
    ...change,
  } as Pull;
}

/** An outbox in memory; every entry is copied on its way in and out, as a device's storage does. */
export function memoryOutbox(entries: readonly OutboxEntry[]): OutboxStore {
  let kept = structuredClone([...entries]);
  return {
    all: async () => structuredClone(kept),
    add: async (entry) => {
      const order = Math.max(0, ...kept.map((one) => one.order)) + 1;
      const added = entryOf(order, entry);
      kept.push(structuredClone(added));
      return added;
    },
    put: async (entry) => {
      kept = kept.map((one) => (one.order === entry.order ? structuredClone(entry) : one));
    },
    remove: async (keys) => {
      kept = kept.filter((one) => !keys.includes(one.key));
    },
  };
}
