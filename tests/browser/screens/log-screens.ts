import type { Page } from 'playwright-core';
import { logOfPull } from '../known-response.js';
import { visitOnTest, type VisitOnTest } from '../visit-on-test.js';
import type { Screen } from './screen.js';

const visit = { route: '/visits/[id]', who: 'owner', isForGloves: true } as const;

/** Brings a log to a visit as a person does. */
async function bringLog(page: Page, { visitId }: VisitOnTest, name: string, text: string): Promise<void> {
  await page.goto(`/visits/${visitId}`);
  await page.getByTestId('next-duty').waitFor();
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(text) };
  await page.locator('input[type="file"]').first().setInputFiles(file);
  await page.getByRole('dialog').waitFor();
}

/** Columns without a name: a logger that nobody has told the book of. */
const withoutNames = (): string =>
  logOfPull(96)
    .split('\r\n')
    .map((line, index) => (index === 0 ? 'c1,c2,c3,c4' : line))
    .join('\r\n');

/** A log on its way into a visit. */
export const logScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-log-read',
    open: async (page) => {
      await bringLog(page, await visitOnTest(page.request, 'SCR 401'), 'pull.csv', logOfPull(62));
      await page.getByRole('dialog').getByLabel('Duty that was set, %').waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-log-unread',
    open: async (page) => {
      await bringLog(page, await visitOnTest(page.request, 'SCR 402'), 'unnamed.csv', withoutNames());
      await page.getByText('Say what its columns hold').waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-log-without-pull',
    open: async (page) => {
      const text = logOfPull(62).split('\r\n').slice(0, 60).join('\r\n');
      await bringLog(page, await visitOnTest(page.request, 'SCR 403'), 'cruise.csv', text);
      await page.getByText('No full-load pull was found in this log.').waitFor();
    },
  },
];
