import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readSettings } from './settings.js';
import { startServer } from './start-server.js';

let folder: string;
let child: ChildProcess | null = null;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-start-'));
});
afterEach(() => {
  child?.kill('SIGKILL');
  child = null;
  rmSync(folder, { recursive: true, force: true });
});

const settingsFor = (more: Record<string, string> = {}) =>
  readSettings({ DATA_DIR: folder, PORT: '0', DASHBOARD_DIR: 'none', DEMO_DATA: 'none', ...more });
const signIn = (origin: string, body: object, place = 'sign-in') =>
  fetch(`${origin}/api/v1/${place}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

test('a demo workshop lets the practice accounts in, today and at the next start', async () => {
  for (let start = 0; start < 2; start += 1) {
    const server = await startServer(settingsFor());
    expect(server.firstOwnerCode).toBeNull();
    for (const role of ['owner', 'tuner', 'desk']) {
      const answer = await signIn(server.origin, {
        email: `${role}@pullbook.example`,
        password: 'practice-only',
      });
      expect(await answer.json()).toMatchObject({ demo: true, member: { role } });
    }
    await server.close();
  }
});

test('a real workshop begins with a code for its first owner, and needs none at the next start', async () => {
  const first = await startServer(settingsFor({ PULLBOOK_MODE: 'serve' }));
  expect(first.firstOwnerCode).toMatch(/^[A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}$/);
  const owner = { email: 'first@example.org', password: 'long enough to pass' };
  const body = { ...owner, code: first.firstOwnerCode, workshopName: 'Ours', name: 'First' };
  expect((await signIn(first.origin, body, 'first-owner')).status).toBe(201);
  await first.close();
  const second = await startServer(settingsFor({ PULLBOOK_MODE: 'serve' }));
  expect(second.firstOwnerCode).toBeNull();
  expect((await signIn(second.origin, owner)).status).toBe(200);
  await second.close();
});

test('a dashboard that has not been built is refused by name, and what was opened is closed again', async () => {
  const settings = settingsFor({ DASHBOARD_DIR: folder });
  await expect(startServer(settings)).rejects.toThrow(/^DASHBOARD_DIR holds no built dashboard/);
  expect(existsSync(path.join(folder, 'pullbook.db'))).toBe(true);
  const server = await startServer(settingsFor());
  await server.close();
});

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the process as people do; `onOut` sees what it printed so far. */
function run(
  environment: Record<string, string>,
  onOut: (out: string) => void = () => undefined,
): Promise<Ended> {
  const main = path.join(import.meta.dirname, 'main.ts');
  const started = spawn(process.execPath, ['--conditions=pullbook-source', '--import', 'tsx', main], {
    env: {
      PATH: process.env['PATH'],
      DATA_DIR: folder,
      DASHBOARD_DIR: 'none',
      DEMO_DATA: 'none',
      ...environment,
    },
  });
  child = started;
  let out = '';
  let err = '';
  started.stdout.on('data', (text) => onOut((out += text)));
  started.stderr.on('data', (text) => (err += text));
  return new Promise((resolve) => started.on('close', (code) => resolve({ code, out, err })));
}

test.each([
  [{ PORT: 'eighty' }, 'PORT must be a number from 0 to 65535'],
  [{ HOST: '0.0.0.0' }, 'HOST must be 127.0.0.1, ::1 or localhost in demo mode'],
])(
  'the process refuses %j by name with exit code 1, before it opens anything',
  async (environment, message) => {
    const { code, err } = await run(environment);
    expect(code).toBe(1);
    expect(err).toContain(message);
    expect(existsSync(path.join(folder, 'pullbook.db'))).toBe(false);
  },
);

test('the process says where it serves and who may sign in, and ends cleanly when told to', async () => {
  const ended = await run({ PORT: '0' }, (out) => {
    if (out.includes('desk@pullbook.example')) child?.kill('SIGTERM');
  });
  expect(ended.code).toBe(0);
  expect(ended.out).toMatch(/Pullbook is served at http:\/\/127\.0\.0\.1:\d+/);
  expect(ended.out).toContain('practice-only');
});
