import type { OutboxEntry, OutboxStore, Refusal } from './outbox-entry';
import { fillIn, nextToSend } from './outbox-order';

/** What came of one try. */
export type Try =
  | { readonly kind: 'taken'; readonly answer: unknown }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  /** No answer, or one that says to come back: the same is sent again, with the same key. */
  | { readonly kind: 'later' }
  | { readonly kind: 'signed-out' };

/** An entry ready to go: every id filled in. */
export interface Sendable {
  readonly entry: OutboxEntry;
  readonly path: string;
  readonly bodyText: string | null;
}

export type Post = (sendable: Sendable) => Promise<Try>;

interface Sending {
  readonly store: OutboxStore;
  readonly memberId: string;
  readonly post: Post;
  readonly now: () => Date;
  readonly onChange: () => void;
}

/**
 * Sends what waits, oldest first, one after the other, until nothing waits or the server cannot be reached. A refused
 * entry stays with its reason; what is behind it of the same visit waits for a person's decision.
 *
 * @returns why it stopped
 */
export async function sendOutbox(sending: Sending): Promise<'done' | 'later' | 'signed-out'> {
  const { store, memberId, post, onChange } = sending;
  for (;;) {
    const entries = await store.all();
    const entry = nextToSend(entries, memberId);
    if (entry === null) return 'done';
    const sendable = sendableOf(entry, entries);
    const outcome = sendable === null ? unknownRecord : await post(sendable);
    if (outcome.kind === 'later' || outcome.kind === 'signed-out') return outcome.kind;
    await store.put(settled(entry, outcome, sending.now()));
    onChange();
  }
}

const unknownRecord: Try = {
  kind: 'refused',
  refusal: { status: 0, code: 'not-found', text: 'What this belongs to was never taken in.' },
};

function sendableOf(entry: OutboxEntry, entries: readonly OutboxEntry[]): Sendable | null {
  const path = fillIn(entry.path, entries);
  const bodyText = entry.file === null ? fillIn(JSON.stringify(entry.body), entries) : '';
  if (path === null || bodyText === null) return null;
  return { entry, path, bodyText: entry.file === null ? bodyText : null };
}

type Final = Extract<Try, { kind: 'taken' | 'refused' }>;

/** A file that has arrived need not be kept here as well. */
function settled(entry: OutboxEntry, outcome: Final, at: Date): OutboxEntry {
  if (outcome.kind === 'refused') return { ...entry, state: 'refused', refusal: outcome.refusal };
  const sentAt = at.toISOString();
  return { ...entry, state: 'sent', refusal: null, answer: outcome.answer, sentAt, file: null };
}
