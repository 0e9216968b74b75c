import { databaseKind, DatabaseRefusedError } from '@pullbook/database';
import net from 'node:net';
import path from 'node:path';
import { z } from 'zod';
import type { Mode } from './plumbing/app-parts.js';

export interface Settings {
  readonly mode: Mode;
  readonly host: string;
  readonly port: number;
  /** Folder for the book's file and the original bytes of logs. */
  readonly dataDir: string;
  readonly databaseUrl: string;
  /** Folder of the built dashboard; null to serve the API alone. */
  readonly dashboardDir: string | null;
  /** Whether a new demo workshop is filled with cars and pulls. */
  readonly demoData: boolean;
}

/** A setting that cannot be used; the message names it and says what would have been right. */
export class SettingError extends Error {
  readonly setting: string;

  constructor(setting: string, message: string) {
    super(`${setting} ${message}`);
    this.name = 'SettingError';
    this.setting = setting;
  }
}

const root = path.resolve(import.meta.dirname, '../../..');

const schema = z.object({
  PULLBOOK_MODE: z.enum(['demo', 'serve'], 'must be demo or serve').default('demo'),
  HOST: z
    .string()
    .refine((host) => host === 'localhost' || net.isIP(host) !== 0, 'must be localhost or an IP address')
    .default('127.0.0.1'),
  PORT: z
    .string()
    .regex(/^\d{1,5}$/, 'must be a number from 0 to 65535')
    .transform(Number)
    .refine((port) => port <= 65535, 'must be a number from 0 to 65535')
    .default(3000),
  DATA_DIR: z.string().optional(),
  DATABASE_URL: z.string().refine(isDatabaseUrl, 'must begin with file: or with postgresql://').optional(),
  DASHBOARD_DIR: z.string().default(path.join(root, 'apps/web')),
  DEMO_DATA: z.enum(['full', 'none'], 'must be full or none').default('full'),
});

/**
 * Settings from the environment; one that is empty counts as left out.
 * HOST, PORT: where the dashboard and the API are served, default 127.0.0.1 and 3000 · PULLBOOK_MODE: demo (default) or
 * serve · DATA_DIR: default data/demo or data/workshop · DATABASE_URL: default a file in DATA_DIR · DASHBOARD_DIR:
 * default apps/web, `none` for the API alone · DEMO_DATA: full (default) or none.
 * @throws SettingError for the first that cannot be used
 */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''));
  const result = schema.safeParse(given);
  if (!result.success) {
    const [issue] = result.error.issues;
    throw new SettingError(String(issue?.path[0]), issue?.message ?? 'cannot be used');
  }
  const { PULLBOOK_MODE: mode, HOST: host, PORT: port, DASHBOARD_DIR, DEMO_DATA } = result.data;
  refuseOpenDemo(mode, host);
  const dataDir = path.resolve(root, result.data.DATA_DIR ?? dataDirOf[mode]);
  return {
    mode,
    host,
    port,
    dataDir,
    databaseUrl: result.data.DATABASE_URL ?? `file:${path.join(dataDir, 'pullbook.db')}`,
    dashboardDir: DASHBOARD_DIR === 'none' ? null : path.resolve(root, DASHBOARD_DIR),
    demoData: DEMO_DATA === 'full',
  };
}

const dataDirOf: Record<Mode, string> = { demo: 'data/demo', serve: 'data/workshop' };

function refuseOpenDemo(mode: Mode, host: string): void {
  if (mode !== 'demo' || isLoopback(host)) return;
  const why = 'its password is known to everybody; use npm run serve for a real workshop';
  throw new SettingError('HOST', `must be 127.0.0.1, ::1 or localhost in demo mode: ${why}`);
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host.startsWith('127.');
}

function isDatabaseUrl(url: string): boolean {
  try {
    databaseKind(url);
    return true;
  } catch (error) {
    if (error instanceof DatabaseRefusedError) return false;
    throw error;
  }
}
