// npm run docs:pictures [-- NAME …]: pictures of all screens that want one, or of those named, into docs/pictures.
import fs from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { launchChromium } from './chromium.js';
import { startProduct } from './product.js';
import { Devices } from './screens/devices.js';
import type { Screen } from './screens/screen.js';
import { screens } from './screens/screens.js';

const folder = path.resolve(import.meta.dirname, '../../docs/pictures');
const sizes = {
  phone: { width: 360, height: 780 },
  tablet: { width: 1180, height: 820 },
  desktop: { width: 1440, height: 900 },
} as const;
type Size = keyof typeof sizes;

interface Look {
  readonly size: Size;
  readonly scheme: 'light' | 'dark';
}

/** Longest wait for a page to come to rest, and how long it has to stay so, ms. */
const LONGEST_MS = 30_000;
const QUIET_MS = 1500;

/** Waits until nothing has been on its way for a while. */
async function untilQuiet(page: Page): Promise<void> {
  const end = Date.now() + LONGEST_MS;
  let quietSince = Date.now();
  while (Date.now() < end && Date.now() - quietSince < QUIET_MS) {
    await page.waitForTimeout(100);
    if ((await page.locator('[aria-busy="true"]').count()) > 0) quietSince = Date.now();
  }
}

async function take(devices: Devices, { size, scheme }: Look, screen: Screen): Promise<void> {
  const { context, page } = await devices.open(screen, { viewport: sizes[size], colorScheme: scheme });
  await page.waitForLoadState('load');
  await untilQuiet(page);
  await page.screenshot({ path: path.join(folder, `${screen.name}-${size}-${scheme}.png`) });
  await context.close();
}

const product = await startProduct('demo');
const browser = await launchChromium();
const devices = new Devices(browser, product.origin);
try {
  fs.mkdirSync(folder, { recursive: true });
  const named = process.argv.slice(2);
  const wanted = (screen: Screen) => (named.length === 0 ? screen.isPictured : named.includes(screen.name));
  for (const screen of screens.filter(wanted)) {
    for (const size of Object.keys(sizes) as Size[]) {
      for (const scheme of ['light', 'dark'] as const) await take(devices, { size, scheme }, screen);
    }
  }
} finally {
  await devices.close();
  await browser.close();
  await product.stop();
}
