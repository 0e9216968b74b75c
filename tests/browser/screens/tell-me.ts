import type { Page } from 'playwright-core';

/**
 * Tells this device alone that the person has other settings: others are on screens of the same person at the same time.
 * What it would change of the person is not taken.
 */
export async function tellMe(page: Page, settings: object): Promise<void> {
  await page.route('**/api/v1/me', async (route) => {
    if (route.request().method() !== 'GET') return route.fulfill({ status: 503, json: {} });
    const answer = await route.fetch();
    return route.fulfill({ response: answer, json: { ...(await answer.json()), ...settings } });
  });
}
