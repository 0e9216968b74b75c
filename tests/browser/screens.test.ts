import fs from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Devices } from './screens/devices.js';
import { faultsOf } from './screens/looks.js';
import { screens } from './screens/screens.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';

const browser = sharedBrowser();
let devices: Devices | undefined;
afterAll(() => devices?.close());
const asked = process.env['SCREENS'];
const chosen = screens.filter(({ name }) => asked === undefined || asked.split(',').includes(name));

describe('every screen', () => {
  test('of the dashboard is in the list, and every page in the list is one', () => {
    const app = path.resolve(import.meta.dirname, '../../apps/web/app');
    const routes = fs
      .readdirSync(app, { recursive: true, encoding: 'utf8' })
      .filter((file) => path.basename(file) === 'page.tsx')
      .map((file) => `/${path.dirname(file)}`.replaceAll(/\/\([^/]+\)|\/\.$/g, '') || '/');
    expect(routes.length).toBeGreaterThan(10);
    const listed = new Set(screens.flatMap(({ route }) => route ?? []));
    expect([...listed].sort()).toEqual(routes.sort());
    expect(new Set(screens.map(({ name }) => name)).size).toBe(screens.length);
  });

  test.concurrent.each(chosen)(
    'has no accessibility fault and loses nothing on a phone, at 200 % zoom or with large text: $name',
    async (screen) => {
      devices ??= new Devices(browser(), sharedOrigin());
      const { context, page } = await devices.open(screen);
      expect(await faultsOf(page, screen)).toEqual([]);
      await context.close();
    },
  );
});
