import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream, existsSync } from 'node:fs';
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { createGzip, gunzip, gzip } from 'node:zlib';

/** Keeps original bytes under their SHA-256, compressed; the same bytes are kept once. */
export interface ObjectStore {
  /** Where files lie that are still coming in, part by part. */
  readonly uploadsFolder: string;
  /** Returns the hash under which the bytes can be had again; when it returns, they are on the disk. */
  put(bytes: Uint8Array): Promise<{ sha256: string; byteCount: number }>;
  /** Takes bytes as they come, however many: hashed and compressed to the disk, but not in the store until kept. */
  receive(pieces: AsyncIterable<Uint8Array>): Promise<ReceivedObject>;
  /** The very bytes; throws where there are none, or where they no longer fit their hash. */
  get(sha256: string): Promise<Buffer>;
  /** Where they lie, compressed by gzip: for whoever reads them piece by piece. */
  fileOf(sha256: string): string;
  /** A place beside them for something that was made from them and can be made again. */
  besideOf(sha256: string, name: string): string;
}

/** Bytes that came in and wait for what is decided on them. */
export interface ReceivedObject {
  readonly sha256: string;
  readonly byteCount: number;
  /** Where they lie meanwhile, compressed by gzip. */
  readonly file: string;
  /** Puts them into the store under their hash. */
  keep(): Promise<void>;
  /** Leaves nothing of them. */
  drop(): Promise<void>;
}

/** An object store in a folder: `ab/cdef….gz`. Files are written aside and renamed, so none is ever half there. */
export function openObjectStore(folder: string): ObjectStore {
  const fileOf = (sha256: string): string => path.join(folder, sha256.slice(0, 2), `${sha256.slice(2)}.gz`);
  return {
    uploadsFolder: `${folder}-uploads`,
    async put(bytes) {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      const file = fileOf(sha256);
      if (!existsSync(file)) await writeWhole(file, await promisify(gzip)(bytes));
      return { sha256, byteCount: bytes.byteLength };
    },
    receive: (pieces) => receivePieces(pieces, folder, fileOf),
    fileOf,
    besideOf: (sha256, name) => path.join(folder, sha256.slice(0, 2), `${sha256.slice(2)}.${name}`),
    async get(sha256) {
      if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error('not a SHA-256');
      const bytes = await promisify(gunzip)(await readFile(fileOf(sha256)));
      const found = createHash('sha256').update(bytes).digest('hex');
      if (found !== sha256) throw new Error(`object ${sha256} is damaged`);
      return bytes;
    },
  };
}

async function receivePieces(
  pieces: AsyncIterable<Uint8Array>,
  folder: string,
  fileOf: (sha256: string) => string,
): Promise<ReceivedObject> {
  await mkdir(folder, { recursive: true });
  const aside = path.join(folder, `${randomUUID()}.part`);
  const drop = (): Promise<void> => rm(aside, { force: true });
  const hash = createHash('sha256');
  let byteCount = 0;
  async function* counted(): AsyncGenerator<Uint8Array> {
    for await (const piece of pieces) {
      hash.update(piece);
      byteCount += piece.byteLength;
      yield piece;
    }
  }
  try {
    await pipeline(counted, createGzip(), createWriteStream(aside, { flags: 'wx', flush: true }));
  } catch (error) {
    await drop();
    throw error;
  }
  const sha256 = hash.digest('hex');
  const keep = async (): Promise<void> => {
    const file = fileOf(sha256);
    await mkdir(path.dirname(file), { recursive: true });
    await rename(aside, file);
  };
  return { sha256, byteCount, file: aside, keep, drop };
}

async function writeWhole(file: string, content: Uint8Array): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true });
  const aside = `${file}.${randomUUID()}.part`;
  const handle = await open(aside, 'wx');
  try {
    await handle.writeFile(content);
    await handle.sync();
    await handle.close();
    await rename(aside, file);
  } catch (error) {
    await handle.close().catch(() => undefined);
    await rm(aside, { force: true });
    throw error;
  }
}
