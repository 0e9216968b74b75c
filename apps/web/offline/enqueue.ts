import { newKey } from '../client/intent-key';
import { deviceOutbox } from './device-outbox';
import { tellTabs } from './outbox-channel';
import type { OutboxEntry, Shown } from './outbox-entry';
import { outboxView } from './outbox-view';

export interface Letter {
  readonly memberId: string;
  /** Letters of one visit are sent in order, one after the other. */
  readonly visitId: string;
  /** Below /api/v1, such as `/tuning-sessions/ID/pulls`; `idMadeBy(key)` stands for an id not known yet. */
  readonly path: string;
  readonly body?: unknown;
  readonly file?: Blob;
  readonly method?: 'POST' | 'PUT' | 'PATCH';
  readonly ifMatch?: number;
  /** What it is, in plain words: it is read when it waits, and when it is refused. */
  readonly label: string;
  /** What screens show until the server has answered; given the key that the entry will have. */
  readonly shows?: (key: string) => Shown;
}

/**
 * Writes down what the server is to get, online or not: it is on this device when this resolves, and is sent once, in
 * its turn, as soon as the server can be reached. The one way by which the visit screen records anything.
 *
 * @throws DOMException where the device cannot keep anything; then nothing was written down
 */
export async function enqueue(letter: Letter): Promise<OutboxEntry> {
  void navigator.storage?.persist?.().catch(() => false);
  const key = newKey();
  const entry = await deviceOutbox.add({
    key,
    memberId: letter.memberId,
    visitId: letter.visitId,
    method: letter.method ?? 'POST',
    path: letter.path,
    body: letter.body ?? {},
    file: letter.file ?? null,
    ifMatch: letter.ifMatch ?? null,
    label: letter.label,
    madeAt: new Date().toISOString(),
    shows: letter.shows?.(key) ?? {},
  });
  await outboxView.readAgain();
  tellTabs('outbox');
  return entry;
}
