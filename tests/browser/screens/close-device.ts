import type { BrowserContext } from 'playwright-core';
import { inTime } from './in-time.js';

/** Longest wait for a page to be led away, ms. */
const LEAVING_MS = 15_000;

/**
 * Closes a device with its pages. These are led away first: the browser may never finish closing one whose document is
 * just being loaded (8 of 25 tries with a page that reloads; none of 25 once it was led away).
 */
export async function closeDevice(context: BrowserContext): Promise<void> {
  for (const page of context.pages()) {
    // One that crashed, or was on its way elsewhere, is not loading any more either.
    await page.goto('about:blank', { timeout: LEAVING_MS }).catch(() => undefined);
  }
  await inTime('the device to be closed', context.close());
}
