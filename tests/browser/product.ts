import { spawn, type ChildProcess } from 'node:child_process';
import fs from 'node:fs';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';

/** The built product as a person runs it: its own process, its own port, its own empty data folder. */
export interface Product {
  readonly origin: string;
  /** Where its book lies. */
  readonly dataDir: string;
  readonly output: () => string;
  /** Ends it. @param keepsBook leaves its data folder; else that goes with it */
  readonly stop: (keepsBook?: boolean) => Promise<void>;
}

const main = path.resolve(import.meta.dirname, '../../apps/api/dist/main.js');

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = net.createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

async function isHealthy(origin: string): Promise<boolean> {
  try {
    return (await fetch(`${origin}/api/v1/health`)).ok;
  } catch {
    return false;
  }
}

async function untilHealthy(origin: string, child: ChildProcess, output: () => string): Promise<void> {
  const deadline = Date.now() + 90_000;
  while (Date.now() < deadline) {
    if (child.exitCode !== null) throw new Error(`the server ended early:\n${output()}`);
    if (await isHealthy(origin)) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the server did not become healthy:\n${output()}`);
}

/**
 * Starts the built product in the given mode and waits until it is healthy.
 *
 * @param book data folder of a product that was stopped, to go on with a copy of; else a book of its own is begun
 */
export async function startProduct(mode: 'demo' | 'serve' = 'demo', book?: string): Promise<Product> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'product-'));
  if (book !== undefined) fs.cpSync(book, folder, { recursive: true });
  const port = await freePort();
  const origin = `http://127.0.0.1:${port}`;
  const child = spawn(process.execPath, [main], {
    env: {
      ...process.env,
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
      PULLBOOK_MODE: mode,
      PORT: String(port),
      DATA_DIR: folder,
      DATABASE_URL: '',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (text += chunk.toString()));
  const stop = async (keepsBook = false): Promise<void> => {
    if (child.exitCode === null) {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGTERM');
      await ended;
    }
    if (!keepsBook) fs.rmSync(folder, { recursive: true, force: true });
  };
  try {
    await untilHealthy(origin, child, () => text);
  } catch (error) {
    await stop();
    throw error;
  }
  return { origin, dataDir: folder, output: () => text, stop };
}
