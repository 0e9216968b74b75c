import type { OutboxEntry } from './outbox-entry';

/** Entries that the server has not taken yet. */
export function unsentOf(entries: readonly OutboxEntry[]): OutboxEntry[] {
  return entries.filter((entry) => entry.state !== 'sent');
}

/**
 * The next entry to send for this person: the oldest one that waits, but not past one of the same visit that was
 * refused. What was recorded after it goes out only when a person has decided about it, so the order holds.
 */
export function nextToSend(entries: readonly OutboxEntry[], memberId: string): OutboxEntry | null {
  const held = new Set<string>();
  for (const entry of [...entries].sort((a, b) => a.order - b.order)) {
    if (entry.memberId !== memberId || entry.state === 'sent' || held.has(entry.visitId)) continue;
    if (entry.state === 'waiting') return entry;
    held.add(entry.visitId);
  }
  return null;
}

/** The entry and all that cannot be sent without it: the void of a pull that never came to be. */
export function withDependents(entries: readonly OutboxEntry[], key: string): OutboxEntry[] {
  const keys = new Set([key]);
  const taken: OutboxEntry[] = [];
  for (const entry of [...entries].sort((a, b) => a.order - b.order)) {
    if (entry.key !== key && !namedIn(entry).some((name) => keys.has(name))) continue;
    keys.add(entry.key);
    taken.push(entry);
  }
  return taken;
}

/** What an entry says about the preset that it was driven for. */
export interface DrivenFor {
  readonly presetId?: string;
  readonly presetRevision?: number;
}

/** The entry, and those not sent yet that were driven in the same visit on the same revision of the same preset. */
export function drivenAlike(entries: readonly OutboxEntry[], entry: OutboxEntry): OutboxEntry[] {
  const { presetId, presetRevision } = entry.body as DrivenFor;
  return unsentOf(entries).filter((one) => {
    const body = one.body as DrivenFor;
    const isAlike = body.presetId === presetId && body.presetRevision === presetRevision;
    return one.key === entry.key || (one.visitId === entry.visitId && presetId !== undefined && isAlike);
  });
}

const made = /\{made:([\w-]+)\}/g;

/** Keys of the entries whose records this one speaks of. */
function namedIn({ path, body }: OutboxEntry): string[] {
  return [...`${path} ${JSON.stringify(body)}`.matchAll(made)].flatMap(([, key]) => key ?? []);
}

/** Stands for the id of the record that an entry will have made. */
export const idMadeBy = (key: string): string => `{made:${key}}`;

/** Puts the ids that the server gave in place of `{made:KEY}`; null while one of them is not known. */
export function fillIn(text: string, entries: readonly OutboxEntry[]): string | null {
  let isKnown = true;
  const filled = text.replaceAll(made, (_all, key: string) => {
    const answer = entries.find((entry) => entry.key === key)?.answer as { id?: unknown } | null | undefined;
    if (typeof answer?.id === 'string') return answer.id;
    isKnown = false;
    return '';
  });
  return isKnown ? filled : null;
}
