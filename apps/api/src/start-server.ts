import { openDatabase, type OpenDatabase } from '@pullbook/database';
import { randomInt } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { buildApp } from './app.js';
import { ensureDemoWorkshop } from './demo/ensure-demo-workshop.js';
import { openDashboard } from './open-dashboard.js';
import { getSetup } from './people/get-setup.js';
import { forgetWhatRanOut } from './plumbing/forget-what-ran-out.js';
import { openObjectStore, type ObjectStore } from './plumbing/object-store.js';
import type { Settings } from './settings.js';

export interface RunningServer {
  /** Where people find it. */
  readonly origin: string;
  /** What lets the first owner in; null where there is one, and in demo mode. */
  readonly firstOwnerCode: string | null;
  /** Finishes what is under way, then closes everything. */
  readonly close: () => Promise<void>;
}

interface Opened {
  readonly database: OpenDatabase;
  readonly objects: ObjectStore;
  readonly closers: (() => Promise<void>)[];
}

/** Opens the book and serves it; whatever was opened is closed again when something fails on the way. */
export async function startServer(settings: Settings): Promise<RunningServer> {
  const closers: (() => Promise<void>)[] = [];
  const close = async (): Promise<void> => {
    for (const closer of closers.splice(0).reverse()) await closer();
  };
  try {
    mkdirSync(settings.dataDir, { recursive: true });
    const database = await openDatabase({ url: settings.databaseUrl });
    closers.push(database.close);
    await forgetWhatRanOut(database.client, new Date());
    const objects = openObjectStore(path.join(settings.dataDir, 'objects'));
    return { ...(await serve(settings, { database, objects, closers })), close };
  } catch (error) {
    await close();
    throw error;
  }
}

async function serve(settings: Settings, opened: Opened): Promise<Omit<RunningServer, 'close'>> {
  const { database, objects, closers } = opened;
  const { mode, dashboardDir } = settings;
  if (mode === 'demo') await ensureDemoWorkshop({ database, objects, isFull: settings.demoData });
  const setup = await getSetup({ client: database.client, mode });
  const firstOwnerCode = setup.needsFirstOwner ? newCode() : null;
  const dashboard = dashboardDir === null ? null : await openDashboard(dashboardDir);
  if (dashboard) closers.push(dashboard.close);
  const app = await buildApp({
    database,
    objects,
    mode,
    logger: { level: mode === 'demo' ? 'warn' : 'info' },
    ...(dashboard ? { dashboard: dashboard.handler } : {}),
    ...(firstOwnerCode === null ? {} : { firstOwnerCode }),
  });
  closers.push(() => app.close());
  await app.listen({ host: settings.host, port: settings.port });
  return { origin: originOf(settings.host, app.server.address() as AddressInfo), firstOwnerCode };
}

/** Letters and digits that nobody takes for another. */
const codeSigns = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';

function newCode(): string {
  const four = (): string => Array.from({ length: 4 }, () => codeSigns[randomInt(codeSigns.length)]).join('');
  return `${four()}-${four()}-${four()}`;
}

function originOf(host: string, { port }: AddressInfo): string {
  const isAny = host === '0.0.0.0' || host === '::';
  const name = isAny ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  return `http://${name}:${port}`;
}
