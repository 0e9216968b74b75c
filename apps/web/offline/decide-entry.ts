import { deviceOutbox } from './device-outbox';
import { tellTabs } from './outbox-channel';
import type { OutboxEntry } from './outbox-entry';
import { drivenAlike, withDependents } from './outbox-order';
import { outboxView } from './outbox-view';

/** Sends a refused entry once more, after what stood in its way was put right. */
export async function sendAgain(entry: OutboxEntry): Promise<void> {
  await deviceOutbox.put({ ...entry, state: 'waiting', refusal: null });
  await tell();
}

/**
 * Sends pulls that were driven for a goal of before under the revision of now: this one, and those behind it that were
 * driven on the same revision. A person who saw both has said so.
 */
export async function sendUnderRevision(entry: OutboxEntry, presetRevision: number): Promise<void> {
  for (const one of drivenAlike(await deviceOutbox.all(), entry)) {
    const body = { ...(one.body as object), presetRevision };
    await deviceOutbox.put({ ...one, body, state: 'waiting', refusal: null });
  }
  await tell();
}

/** Takes an entry out for good, with everything that cannot be without it. A person has said so. */
export async function dropEntry(entry: OutboxEntry): Promise<void> {
  const entries = await deviceOutbox.all();
  await deviceOutbox.remove(withDependents(entries, entry.key).map((one) => one.key));
  await tell();
}

async function tell(): Promise<void> {
  await outboxView.readAgain();
  tellTabs('outbox');
}
