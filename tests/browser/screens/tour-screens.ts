import type { Screen } from './screen.js';
import { tellMe } from './tell-me.js';

type Step = readonly [
  name: string,
  route: '/board' | '/practice',
  address: string,
  step: number,
  says: string,
];

const inDemo: readonly Step[] = [
  ['tour-first', '/board', '/board', 0, '1 of 7, Board.'],
  ['tour-middle', '/board', '/board', 3, '4 of 7, Record.'],
  ['tour-last', '/board', '/board', 6, '7 of 7, Report.'],
];
const inNewBook: readonly Step[] = [
  ['tour-new-first', '/board', '/board', 0, '1 of 7, Practice.'],
  ['tour-new-middle', '/practice', '/practice?level=calm&car=3', 2, '3 of 7, Next pull.'],
  ['tour-new-last', '/practice', '/practice', 6, '7 of 7, Report.'],
];

/** A place at a step of the tour, which is said to this device alone. */
const atStep = ([name, route, address, tourStep, says]: Step): Screen => ({
  name,
  route,
  who: 'owner',
  open: async (page) => {
    await tellMe(page, { tourStep });
    await page.goto(address);
    await page.getByRole('complementary', { name: 'First tour' }).getByText(says).waitFor();
  },
});

/** The first tour at its first, a middle and its last step, in the demo and in a book that has just been opened. */
export const tourScreens: readonly Screen[] = [
  ...inDemo.map(atStep),
  ...inNewBook.map((step): Screen => ({ ...atStep(step), book: 'new' })),
];
