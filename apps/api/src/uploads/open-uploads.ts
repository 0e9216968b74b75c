import { FileStore } from '@tus/file-store';
import { Server } from '@tus/server';
import type { Upload as StoredUpload } from '@tus/utils';
import { AsyncLocalStorage } from 'node:async_hooks';
import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, existsSync, mkdirSync } from 'node:fs';
import { open } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import path from 'node:path';
import { MOST_LOG_BYTES } from '../logs/log-pieces.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';

/** A file that has come in whole. */
export interface Upload {
  readonly id: string;
  readonly fileName: string;
  readonly byteCount: number;
  readonly uploadedAt: Date;
  /** When the sender's device last wrote the file; null where it did not say. */
  readonly writtenAt: Date | null;
  /** Of its bytes, in hex; counted once. */
  readonly sha256: () => Promise<string>;
  readonly pieces: () => AsyncIterable<Uint8Array>;
  /** Its first bytes. */
  readonly head: (mostBytes: number) => Promise<Uint8Array>;
}

/** Files that come in part by part, and go on after a break where they stopped: the tus protocol, version 1.0. */
export interface Uploads {
  /** Answers a request of the protocol for somebody who is signed in. */
  handle(actor: Actor, request: IncomingMessage, response: ServerResponse): Promise<void>;
  /** @throws DomainError not-found for one that is not the workshop's, conflict for one that is not whole */
  get(actor: Actor, id: string): Promise<Upload>;
  /** Those of the workshop that have come in whole, in the order in which they came. */
  list(actor: Actor): Promise<Upload[]>;
  /** @throws DomainError not-found for one that is not the workshop's */
  requireOwn(actor: Actor, id: string): Promise<void>;
  drop(id: string): Promise<void>;
  /** Drops what nobody took in for a week. */
  dropExpired(): Promise<number>;
}

const KEPT_MS = 7 * 24 * 3600 * 1000;

/** Uploads in a folder, which is made when the first one comes. */
export function openUploads(folder: string, url: string): Uploads {
  const sender = new AsyncLocalStorage<Actor>();
  const hashes = new Map<string, Promise<string>>();
  let opened: { store: FileStore; server: Server } | null = null;
  const openOnce = (): { store: FileStore; server: Server } => (opened ??= openServer(folder, url, sender));
  const own = async (actor: Actor, id: string) => {
    const found = await openOnce()
      .store.getUpload(id)
      .catch(() => null);
    if (found?.metadata?.['workshopId'] === actor.workshopId) return found;
    throw new DomainError('not-found', 'this workshop has no such upload; it may have been taken in already');
  };
  return {
    handle: (actor, request, response) =>
      sender.run(actor, () => openOnce().server.handle(request, response)),
    async requireOwn(actor, id) {
      await own(actor, id);
    },
    async get(actor, id) {
      const found = await own(actor, id);
      if (found.size === undefined || found.offset !== found.size)
        throw new DomainError('conflict', 'this file has not come in whole yet; send the rest first');
      return presentUpload(folder, found, hashes);
    },
    async list(actor) {
      if (!existsSync(folder)) return [];
      const { store } = openOnce();
      const ids = (await store.configstore.list?.()) ?? [];
      // One that is taken in meanwhile is simply not there any more.
      const all = await Promise.all(ids.map((id) => store.getUpload(id).catch(() => null)));
      return all
        .flatMap((found) =>
          found !== null && found.metadata?.['workshopId'] === actor.workshopId && found.offset === found.size
            ? [presentUpload(folder, found, hashes)]
            : [],
        )
        .sort((a, b) => a.uploadedAt.getTime() - b.uploadedAt.getTime() || a.id.localeCompare(b.id));
    },
    drop: (id) => {
      hashes.delete(id);
      return openOnce()
        .store.remove(id)
        .catch(() => undefined);
    },
    dropExpired: () => openOnce().server.cleanUpExpiredUploads(),
  };
}

function openServer(
  folder: string,
  url: string,
  sender: AsyncLocalStorage<Actor>,
): { store: FileStore; server: Server } {
  mkdirSync(folder, { recursive: true });
  const store = new FileStore({ directory: folder, expirationPeriodInMilliseconds: KEPT_MS });
  const server = new Server({
    path: url,
    datastore: store,
    maxSize: MOST_LOG_BYTES,
    // The path alone: behind a proxy the server does not know by which name it was asked.
    generateUrl: (_request, { id }) => `${url}/${id}`,
    allowedOrigins: () => false,
    namingFunction: () => randomUUID().replaceAll('-', ''),
    onUploadCreate: (_request, upload) => {
      const workshopId = sender.getStore()?.workshopId ?? '';
      return Promise.resolve({ metadata: { ...upload.metadata, workshopId } });
    },
  });
  return { store, server };
}

type Hashes = Map<string, Promise<string>>;

function presentUpload(folder: string, found: StoredUpload, hashes: Hashes): Upload {
  const { id, metadata } = found;
  const file = path.join(folder, id);
  const pieces = (): AsyncIterable<Uint8Array> => createReadStream(file, { highWaterMark: 1 << 20 });
  const writtenMs = Number(metadata?.['writtenMs'] ?? NaN);
  return {
    id,
    fileName: metadata?.['filename'] || 'log.csv',
    byteCount: found.size ?? 0,
    uploadedAt: new Date(found.creation_date ?? 0),
    writtenAt: Math.abs(writtenMs) <= LATEST_MS ? new Date(writtenMs) : null,
    sha256: () => {
      const known = hashes.get(id) ?? hashOf(pieces());
      hashes.set(id, known);
      return known;
    },
    pieces,
    head: (mostBytes) => readHead(file, mostBytes),
  };
}

/** The last moment that a date can hold: ECMA-262, 21.4.1.1. */
const LATEST_MS = 8.64e15;

async function hashOf(pieces: AsyncIterable<Uint8Array>): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of pieces) hash.update(piece);
  return hash.digest('hex');
}

async function readHead(file: string, mostBytes: number): Promise<Uint8Array> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(mostBytes), 0, mostBytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
