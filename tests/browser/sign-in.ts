import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';

/** A device of its own, signed in to the demo workshop and standing before the board. */
export async function signIn(
  browser: Browser,
  origin: string,
  email: string,
  options: BrowserContextOptions = {},
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({
    baseURL: origin,
    viewport: { width: 1180, height: 820 },
    ...options,
  });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(email);
  await page.getByLabel('Password').fill('practice-only');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.waitForURL('**/board');
  return { context, page };
}
