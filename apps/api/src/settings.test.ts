import path from 'node:path';
import { expect, test } from 'vitest';
import { readSettings, SettingError } from './settings.js';

test('readSettings without any serves the demo on loopback from a folder of its own', () => {
  const settings = readSettings({});
  expect(settings).toMatchObject({ mode: 'demo', host: '127.0.0.1', port: 3000, demoData: true });
  expect(settings.databaseUrl).toBe(`file:${path.join(settings.dataDir, 'pullbook.db')}`);
  expect(settings.dataDir.endsWith(path.join('data', 'demo'))).toBe(true);
  expect(settings.dashboardDir?.endsWith(path.join('apps', 'web'))).toBe(true);
});

test('readSettings takes what is set, and empty for left out', () => {
  const settings = readSettings({
    PULLBOOK_MODE: 'serve',
    HOST: '0.0.0.0',
    PORT: '8080',
    DATA_DIR: '/var/lib/pullbook',
    DATABASE_URL: 'postgresql://book:secret@db/book',
    DASHBOARD_DIR: 'none',
    DEMO_DATA: '',
  });
  expect(settings).toEqual({
    mode: 'serve',
    host: '0.0.0.0',
    port: 8080,
    dataDir: '/var/lib/pullbook',
    databaseUrl: 'postgresql://book:secret@db/book',
    dashboardDir: null,
    demoData: true,
  });
});

test.each([
  [{ PORT: 'eighty' }, 'PORT must be a number from 0 to 65535'],
  [{ PORT: '70000' }, 'PORT must be a number from 0 to 65535'],
  [{ HOST: 'not an address' }, 'HOST must be localhost or an IP address'],
  [{ PULLBOOK_MODE: 'production' }, 'PULLBOOK_MODE must be demo or serve'],
  [{ DEMO_DATA: 'some' }, 'DEMO_DATA must be full or none'],
  [{ DATABASE_URL: 'mysql://x' }, 'DATABASE_URL must begin with file: or with postgresql://'],
  [{ HOST: '0.0.0.0' }, 'HOST must be 127.0.0.1, ::1 or localhost in demo mode'],
])('readSettings refuses %j by name', (environment, message) => {
  expect(() => readSettings(environment)).toThrow(SettingError);
  expect(() => readSettings(environment)).toThrow(message);
});

test('readSettings does not repeat a database address, which may hold a password', () => {
  expect(() => readSettings({ DATABASE_URL: 'mysql://u:hidden@h/d' })).toThrow(/^(?!.*hidden)/);
});
