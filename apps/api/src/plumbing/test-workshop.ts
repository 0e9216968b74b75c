import type { Role } from '@pullbook/contracts';
import { openDatabase, scopeToWorkshop, type OpenDatabase } from '@pullbook/database';
import { hash } from '@node-rs/argon2';
import type { InjectOptions, LightMyRequestResponse } from 'fastify';
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { buildApp, type App, type AppOptions } from '../app.js';
import type { Actor } from './actor.js';
import { openObjectStore } from './object-store.js';
import { hashSecret, newSecret } from './secrets.js';

/** The password of everybody in a test workshop. */
export const testPassword = 'practice-only';

type Ask = Omit<InjectOptions, 'method' | 'url'>;

/** Somebody who is signed in. */
export interface TestPerson {
  readonly memberId: string;
  readonly email: string;
  readonly cookie: string;
  /** For calling service functions without HTTP. */
  readonly actor: Actor;
  /** Asks the app as this person: `owner.ask('POST', '/customers', { payload: { name: 'A' } })`. */
  ask(
    method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE',
    url: string,
    more?: Ask,
  ): Promise<LightMyRequestResponse>;
}

export interface TestWorkshop {
  readonly app: App;
  readonly database: OpenDatabase;
  readonly workshopId: string;
  readonly owner: TestPerson;
  readonly tuner: TestPerson;
  readonly desk: TestPerson;
  /** Owner of another workshop in the same database: whatever is not theirs must not be found by them. */
  readonly stranger: TestPerson;
  /** Stands still until it is moved. */
  readonly clock: { now: () => Date; advance: (seconds: number) => void };
  close(): Promise<void>;
}

let template: string | undefined;

/** A migrated, empty file, made once for each test process and copied for each workshop. */
async function emptyFile(folder: string): Promise<string> {
  if (template === undefined || !existsSync(template)) {
    const made = path.join(mkdtempSync(path.join(os.tmpdir(), 'pullbook-template-')), 'book.db');
    await (await openDatabase({ url: `file:${made}` })).close();
    template = made;
    process.once('exit', () => rmSync(path.dirname(made), { recursive: true, force: true }));
  }
  const file = path.join(folder, 'book.db');
  copyFileSync(template, file);
  return `file:${file}`;
}

/**
 * The real app on a real database in a folder of its own, with a workshop, one signed-in person of each role, and a
 * stranger from another workshop. The clock stands at 2026-11-25 09:00 UTC.
 * @param options what the app should be built with instead; `url` for another database than a fresh SQLite file
 */
export async function openTestWorkshop(
  options: Partial<AppOptions> & { url?: string } = {},
): Promise<TestWorkshop> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-test-'));
  const database = await openDatabase({ url: options.url ?? (await emptyFile(folder)) });
  let nowMs = Date.parse('2026-11-25T09:00:00Z');
  const clock = { now: () => new Date(nowMs), advance: (seconds: number) => void (nowMs += seconds * 1000) };
  const objects = openObjectStore(path.join(folder, 'objects'));
  const app = await buildApp({ mode: 'serve', now: clock.now, ...options, database, objects });
  const ours = await database.client.workshop.create({ data: { name: 'Test workshop' } });
  const others = await database.client.workshop.create({ data: { name: 'Other workshop' } });
  const person = (workshopId: string, role: Role): Promise<TestPerson> =>
    addTestPerson({ app, database, workshopId, now: clock.now }, role);
  return {
    app,
    database,
    workshopId: ours.id,
    owner: await person(ours.id, 'owner'),
    tuner: await person(ours.id, 'tuner'),
    desk: await person(ours.id, 'desk'),
    stranger: await person(others.id, 'owner'),
    clock,
    async close() {
      await app.close();
      await database.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

interface Place {
  readonly app: App;
  readonly database: OpenDatabase;
  readonly workshopId: string;
  readonly now: () => Date;
}

const names: Record<Role, string> = { owner: 'Olga Owner', tuner: 'Tomas Tuner', desk: 'Dana Desk' };

/** One more signed-in person; mail addresses are `role@<workshop id>.example`. */
export async function addTestPerson(place: Place, role: Role): Promise<TestPerson> {
  const db = scopeToWorkshop(place.database.client, place.workshopId);
  const email = `${role}@${place.workshopId}.example`;
  // The cheapest hash there is: what is checked is who may sign in, not how dear a guess is.
  const passwordHash = await hash(testPassword, { memoryCost: 8, timeCost: 1, parallelism: 1 });
  const member = await db.member.create({ data: { name: names[role], email, role, passwordHash } });
  const secret = newSecret();
  const expiresAt = new Date(place.now().getTime() + 365 * 24 * 3600 * 1000);
  await db.signIn.create({ data: { memberId: member.id, secretHash: hashSecret(secret), expiresAt } });
  const cookie = `pullbook_sign_in=${secret}`;
  return {
    memberId: member.id,
    email,
    cookie,
    actor: { memberId: member.id, name: member.name, role, workshopId: place.workshopId, db, now: place.now },
    ask: (method, url, more = {}) =>
      place.app.inject({ ...more, method, url: `/api/v1${url}`, headers: { cookie, ...more.headers } }),
  };
}
