import type { Page } from 'playwright-core';

/** Changes a record on another device, on the revision that it has now. */
export async function changeRecord(page: Page, path: string, change: object): Promise<void> {
  const now = (await (await page.request.get(`/api/v1${path}`)).json()) as { revision: number };
  const answer = await page.request.patch(`/api/v1${path}`, {
    data: change,
    headers: { 'if-match': `"${now.revision}"` },
  });
  if (!answer.ok()) throw new Error(`${path}: ${answer.status()} ${await answer.text()}`);
}
