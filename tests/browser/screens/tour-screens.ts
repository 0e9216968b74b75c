import type { Page } from 'playwright-core';
import type { Screen } from './screen.js';

/**
 * Opens a place at a step of the first tour. The step is said to this device alone: the tour of the person, who is on
 * other screens at the same time, stays as it is.
 */
async function atStep(page: Page, address: string, tourStep: number, says: string): Promise<void> {
  await page.route('**/api/v1/me', async (route) => {
    if (route.request().method() !== 'GET') return route.fulfill({ status: 503, json: {} });
    const answer = await route.fetch();
    return route.fulfill({ response: answer, json: { ...(await answer.json()), tourStep } });
  });
  await page.goto(address);
  await page.getByRole('complementary', { name: 'First tour' }).getByText(says).waitFor();
}

const owner = { who: 'owner' } as const;
const newOwner = { who: 'owner', book: 'new' } as const;

/** The first tour at its first, a middle and its last step, in the demo and in a book that has just been opened. */
export const tourScreens: readonly Screen[] = [
  {
    ...owner,
    name: 'tour-first',
    route: '/board',
    open: (page) => atStep(page, '/board', 0, '1 of 7, Board.'),
  },
  {
    ...owner,
    name: 'tour-middle',
    route: '/board',
    open: (page) => atStep(page, '/board', 3, '4 of 7, Record.'),
  },
  {
    ...owner,
    name: 'tour-last',
    route: '/board',
    open: (page) => atStep(page, '/board', 6, '7 of 7, Report.'),
  },
  {
    ...newOwner,
    name: 'tour-new-first',
    route: '/board',
    open: (page) => atStep(page, '/board', 0, '1 of 7, Practice.'),
  },
  {
    ...newOwner,
    name: 'tour-new-middle',
    route: '/practice',
    open: (page) => atStep(page, '/practice?level=calm&car=3', 2, '3 of 7, Next pull.'),
  },
  {
    ...newOwner,
    name: 'tour-new-last',
    route: '/practice',
    open: (page) => atStep(page, '/practice', 6, '7 of 7, Report.'),
  },
];
