import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { findCard } from './find-card.js';
import { signIn } from './sign-in.js';

/** Scripts of one page on a device that has never seen it, in bytes after gzip. */
export interface PageWeight {
  readonly page: string;
  readonly gzipBytes: number;
  readonly budgetBytes: number;
  readonly scriptCount: number;
}

export const budgetsBytes = { visit: 200_000, report: 60_000 } as const;

/**
 * Weighs the scripts that the visit screen and the customer's report load until they stand still, those that the page
 * asks for ahead too. Bytes are those of gzip at its usual level.
 */
export async function weighScripts(browser: Browser, origin: string): Promise<PageWeight[]> {
  const { context, page } = await signIn(browser, origin, 'owner@pullbook.example');
  const driven = await findCard(page, /^next pull/i);
  const left = await findCard(page, /report/i);
  const made = await page.request.post(`/api/v1/visits/${left.visitId}/report`, {
    headers: { 'content-type': 'application/json' },
    data: {},
  });
  const { url } = (await made.json()) as { url: string };
  const cookies = await context.cookies();
  await context.close();
  const weigh = async (name: keyof typeof budgetsBytes, address: string, readyText: RegExp) => {
    const device = await browser.newContext({ baseURL: origin, serviceWorkers: 'block' });
    await device.addCookies(cookies);
    const sizes: Promise<number>[] = [];
    device.on('response', (response) => {
      const type = response.headers()['content-type'] ?? '';
      if (type.includes('javascript')) {
        sizes.push(response.body().then((body) => gzipSync(body).byteLength));
      }
    });
    const tab = await device.newPage();
    await tab.goto(address);
    await tab.getByText(readyText).first().waitFor();
    await tab.waitForLoadState('networkidle');
    const all = await Promise.all(sizes);
    await device.close();
    const gzipBytes = all.reduce((sum, one) => sum + one, 0);
    return { page: name, gzipBytes, budgetBytes: budgetsBytes[name], scriptCount: all.length };
  };
  return [
    await weigh('visit', `/visits/${driven.visitId}`, /Expected peak/),
    await weigh('report', url, /Over-boost can destroy an engine/),
  ];
}
