import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { openObjectStore } from '../plumbing/object-store.js';
import { logPieces, MOST_LOG_BYTES } from './log-pieces.js';

async function* send(pieceCount: number, seen: { pieces: number }): AsyncGenerator<Uint8Array> {
  for (let piece = 0; piece < pieceCount; piece += 1) {
    seen.pieces += 1;
    yield Buffer.alloc(1 << 20, '0.00,1500,8,-40.0\n');
  }
}

it('logPieces refuses a log over the limit, names it, keeps nothing, and stops listening in the end', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-pieces-'));
  const objects = openObjectStore(folder);
  const seen = { pieces: 0 };
  const receive = objects.receive(logPieces(send(100, seen), 4 << 20));
  await expect(receive).rejects.toMatchObject({
    code: 'too-large',
    message: 'a log may have up to 4 MB; split it, or leave out the parts without pulls',
  });
  expect(seen.pieces).toBe(6);
  expect(readdirSync(folder)).toEqual([]);
  rmSync(folder, { recursive: true });
});

it('logPieces lets a log of the very limit pass', async () => {
  const pieces: number[] = [];
  for await (const piece of logPieces(send(4, { pieces: 0 }), 4 << 20)) pieces.push(piece.byteLength);
  expect(pieces).toHaveLength(4);
  expect(MOST_LOG_BYTES).toBe(1024 ** 3);
});
