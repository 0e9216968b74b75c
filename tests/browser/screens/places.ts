import type { Page } from 'playwright-core';

interface Card {
  readonly visitId: string;
  readonly carId: string;
  readonly stage: string;
}

async function ask<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(`/api/v1${path}`);
  if (!answer.ok()) throw new Error(`${path}: ${answer.status()} ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** Cards of the demo at a stage, those that were collected among them. */
export async function cardAt(page: Page, stage: string): Promise<Card> {
  const { cards } = await ask<{ cards: Card[] }>(page, '/board?collected=true');
  const card = cards.find((one) => one.stage === stage);
  if (card === undefined) throw new Error(`no card of the demo is at ${stage}`);
  return card;
}

export const collectedVisitId = async (page: Page): Promise<string> =>
  (await cardAt(page, 'collected')).visitId;

/** Whose visit it is. */
export const customerIdOf = async (page: Page, visitId: string): Promise<string> =>
  (await ask<{ customerId: string }>(page, `/visits/${visitId}`)).customerId;

/** The newest log of a visit. */
export async function logPath(page: Page, visitId: string): Promise<string> {
  type Items = { items: { id: string }[] };
  const session = (await ask<Items>(page, `/visits/${visitId}/tuning-sessions`)).items.at(-1);
  const log = session && (await ask<Items>(page, `/tuning-sessions/${session.id}/logs`)).items.at(-1);
  if (log === undefined) throw new Error('the demo has no log there');
  return `/logs/${log.id}`;
}

/** A new link to the report of a visit that is signed off. */
export async function reportPath(page: Page, visitId: string): Promise<string> {
  const made = await page.request.post(`/api/v1/visits/${visitId}/report`, {
    headers: { 'content-type': 'application/json' },
    data: {},
  });
  if (!made.ok()) throw new Error(`no report link: ${made.status()} ${await made.text()}`);
  return ((await made.json()) as { url: string }).url;
}
