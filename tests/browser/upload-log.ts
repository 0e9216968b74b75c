import type { Page } from 'playwright-core';
import { findCard } from './find-card.js';

/** Stores a log in a tuning session of the demo that is still open. @returns its id */
export async function uploadLog(page: Page, fileName: string, bytes: Buffer): Promise<string> {
  const { visitId } = await findCard(page, /^next pull/i);
  const sessions = await page.request.get(`/api/v1/visits/${visitId}/tuning-sessions`);
  const { items } = (await sessions.json()) as { items: { id: string }[] };
  const answer = await page.request.post(
    `/api/v1/tuning-sessions/${items.at(-1)?.id}/logs?fileName=${encodeURIComponent(fileName)}`,
    { headers: { 'content-type': 'text/csv' }, data: bytes, timeout: 0, maxRedirects: 0 },
  );
  if (answer.status() !== 201) throw new Error(`the log was not taken in: ${await answer.text()}`);
  return ((await answer.json()) as { id: string }).id;
}
