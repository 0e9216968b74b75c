// npm run docs:pictures [-- NAME …]: pictures of all screens and states, or of those named, into docs/pictures, and the
// page that lists them.
import fs from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { launchChromium } from './chromium.js';
import { pictureName, picturesPage, picturesOf, sizes, type PictureLook } from './pictures-page.js';
import { startProduct } from './product.js';
import { closeDevice } from './screens/close-device.js';
import { Devices } from './screens/devices.js';
import type { Screen } from './screens/screen.js';
import { screens } from './screens/screens.js';

const folder = path.resolve(import.meta.dirname, '../../docs/pictures');

/** Longest wait for a page to come to rest, and how long it has to stay so, ms. */
const LONGEST_MS = 30_000;
const QUIET_MS = 1000;
/** Devices side by side. */
const DEVICES = 3;

/** Waits until nothing has been on its way for a while. */
async function untilQuiet(page: Page): Promise<void> {
  const end = Date.now() + LONGEST_MS;
  let quietSince = Date.now();
  while (Date.now() < end && Date.now() - quietSince < QUIET_MS) {
    await page.waitForTimeout(100);
    if ((await page.locator('[aria-busy="true"]').count()) > 0) quietSince = Date.now();
  }
}

async function take(devices: Devices, look: PictureLook, screen: Screen): Promise<void> {
  const options = { viewport: sizes[look.size], colorScheme: look.scheme };
  const { context, page } = await devices.open(screen, options);
  await page.waitForLoadState('load');
  await untilQuiet(page);
  await page.screenshot({ path: path.join(folder, pictureName(screen, look)) });
  await closeDevice(context);
}

const product = await startProduct('demo');
const browser = await launchChromium();
const devices = new Devices(browser, product.origin);
try {
  fs.mkdirSync(folder, { recursive: true });
  const named = process.argv.slice(2);
  const wanted = screens.filter(({ name }) => named.length === 0 || named.includes(name));
  const jobs = wanted.flatMap((screen) => picturesOf(screen).map((look) => ({ screen, look })));
  const work = async (): Promise<void> => {
    for (let job = jobs.shift(); job !== undefined; job = jobs.shift()) {
      await take(devices, job.look, job.screen);
    }
  };
  await Promise.all(Array.from({ length: DEVICES }, work));
  fs.writeFileSync(path.join(folder, 'README.md'), picturesPage(screens));
} finally {
  await devices.close();
  await browser.close();
  await product.stop();
}
