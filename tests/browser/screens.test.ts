import fs from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { pictureName, picturesOf, picturesPage } from './pictures-page.js';
import { closeDevice } from './screens/close-device.js';
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

  test('and state has its pictures in docs, all of them on one page: npm run docs:pictures', () => {
    const folder = path.resolve(import.meta.dirname, '../../docs/pictures');
    expect(fs.readFileSync(path.join(folder, 'README.md'), 'utf8')).toBe(picturesPage(screens));
    const listed = screens.flatMap((screen) => picturesOf(screen).map((look) => pictureName(screen, look)));
    expect(
      fs
        .readdirSync(folder)
        .filter((file) => file.endsWith('.png'))
        .sort(),
    ).toEqual(listed.sort());
  });

  test.concurrent.each(chosen)(
    'has no accessibility fault and loses nothing on a phone, at 200 % zoom or with large text: $name',
    async (screen) => {
      devices ??= new Devices(browser(), sharedOrigin());
      const { context, page } = await devices.open(screen);
      try {
        expect(await faultsOf(page, screen)).toEqual([]);
      } finally {
        await closeDevice(context);
      }
    },
  );
});
