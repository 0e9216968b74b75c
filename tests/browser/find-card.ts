import type { Page } from 'playwright-core';

interface Card {
  readonly visitId: string;
  readonly carId: string;
  readonly plate: string;
  readonly status: string;
}

/** The first card of the demo's board, left visits among them, whose status reads like this. */
export async function findCard(page: Page, status: RegExp): Promise<Card> {
  const answer = await page.request.get('/api/v1/board?collected=true');
  const { cards } = (await answer.json()) as { cards: Card[] };
  const card = cards.find((one) => status.test(one.status));
  if (card === undefined) throw new Error(`no card of the demo says ${status}`);
  return card;
}
