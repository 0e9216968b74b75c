import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchChromium } from './chromium.js';

/** A browser for the tests of one file, closed after them. @returns it, once the tests run */
export function sharedBrowser(): () => Browser {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser?.close());
  return () => {
    if (browser === undefined) throw new Error('the browser is there only while tests run');
    return browser;
  };
}
