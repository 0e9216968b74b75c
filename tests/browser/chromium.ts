import { chromium, type Browser } from 'playwright-core';

/** Debian's Chromium, told to reach for nothing but the page. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      // A crash that a test brings about is not written down: that takes ten seconds.
      '--disable-breakpad',
      '--disable-crash-reporter',
    ],
  });
}
