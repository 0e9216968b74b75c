import type { ErrorCode, Pull } from '@pullbook/contracts';

/** Something that a person wrote down and that the server has to get: once, and in its turn. */
export interface OutboxEntry {
  /** Its turn: entries of a visit are sent in this order, one after the other. */
  readonly order: number;
  /** Its Idempotency-Key: the same at every try, so that the server makes one record of it. */
  readonly key: string;
  /** Who wrote it down; it is sent under nobody else's name. */
  readonly memberId: string;
  readonly visitId: string;
  readonly method: 'POST' | 'PUT' | 'PATCH';
  /** Below /api/v1. `{made:KEY}` in here and in the body stands for the id of what that entry made. */
  readonly path: string;
  readonly body: unknown;
  /** A file is sent instead of the body. */
  readonly file: Blob | null;
  /** Revision that a change was made on. */
  readonly ifMatch: number | null;
  /** What it is, in plain words. */
  readonly label: string;
  readonly madeAt: string;
  /** What screens show of it until the server has answered. */
  readonly shows: Shown;
  readonly state: 'waiting' | 'refused' | 'sent';
  readonly refusal: Refusal | null;
  /** The server's answer, once sent. */
  readonly answer: unknown;
  readonly sentAt: string | null;
}

/** What an entry adds to what is seen, before the server knows of it. */
export interface Shown {
  readonly pull?: Pull;
  readonly voided?: { readonly pullId: string; readonly reason: string };
  /** The car was looked over after this pull and found sound. */
  readonly foundSound?: { readonly pullId: string; readonly note: string; readonly by: string };
}

/** Why the server did not take an entry. */
export interface Refusal {
  readonly status: number;
  readonly code: ErrorCode;
  readonly text: string;
}

/** An entry as it is handed in: its turn and its fate are not known yet. */
export type NewEntry = Omit<OutboxEntry, 'order' | 'state' | 'refusal' | 'answer' | 'sentAt'>;

/** Where entries are kept. Every call has ended on the device's own storage before it resolves. */
export interface OutboxStore {
  readonly all: () => Promise<OutboxEntry[]>;
  readonly add: (entry: NewEntry) => Promise<OutboxEntry>;
  readonly put: (entry: OutboxEntry) => Promise<void>;
  readonly remove: (keys: readonly string[]) => Promise<void>;
}
