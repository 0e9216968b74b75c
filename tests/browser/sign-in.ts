import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';

/** A device of its own, signed in to the demo workshop or, with a password, to another, its first tour over, and standing before the board. */
export async function signIn(
  browser: Browser,
  origin: string,
  email: string,
  { password = 'practice-only', ...options }: BrowserContextOptions & { readonly password?: string } = {},
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({
    baseURL: origin,
    viewport: { width: 1180, height: 820 },
    ...options,
  });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('Email').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.waitForURL('**/board');
  const over = await page.request.patch('/api/v1/me', { data: { tourStep: null } });
  if (!over.ok()) throw new Error(`the first tour stays: ${over.status()} ${await over.text()}`);
  await page.reload();
  return { context, page };
}
