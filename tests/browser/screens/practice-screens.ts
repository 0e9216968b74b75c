import type { Page } from 'playwright-core';
import type { Screen } from './screen.js';

const practice = { who: 'tuner', route: '/practice' } as const;

async function toTheBench(page: Page, car = 'level=lively&car=12'): Promise<void> {
  await page.goto(`/practice?${car}`);
  await page.getByRole('heading', { name: 'Readiness check' }).waitFor();
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  await page.getByRole('button', { name: 'To the first pull' }).click();
  await page.getByRole('heading', { name: /^Pull 1: which duty/ }).waitFor();
}

async function drive(page: Page, dutyPct: number, number: number): Promise<void> {
  await page.getByLabel('Duty to drive, %', { exact: true }).fill(String(dutyPct));
  await page.getByRole('button', { name: `Drive pull ${number}`, exact: true }).click();
  await page.getByText(`Pull ${number} at ${dutyPct} %`).waitFor();
}

/** Practice from the choice of a car to the truth about it. */
export const practiceScreens: readonly Screen[] = [
  {
    ...practice,
    name: 'practice-choice',
    open: async (page) => {
      await page.goto('/practice');
      await page.getByRole('heading', { name: 'Practice' }).waitFor();
    },
  },
  {
    ...practice,
    name: 'practice-readiness',
    open: async (page) => {
      await page.goto('/practice?level=steep&car=77');
      await page.getByRole('heading', { name: 'Readiness check' }).waitFor();
    },
  },
  {
    ...practice,
    name: 'practice',
    isPage: true,
    open: async (page) => {
      await toTheBench(page);
      for (const [index, dutyPct] of [10, 20, 30, 40].entries()) await drive(page, dutyPct, index + 1);
      await page.getByRole('button', { name: 'Show what the book advises' }).click();
      await page.getByTestId('next-duty').waitFor();
    },
  },
  {
    ...practice,
    name: 'practice-stop',
    open: async (page) => {
      await toTheBench(page, 'level=doubtful&car=1');
      for (const [index, dutyPct] of [7, 17, 27, 35, 40, 40].entries()) await drive(page, dutyPct, index + 1);
      await page.getByRole('button', { name: 'Show what the book advises' }).click();
      await page.getByRole('button', { name: 'Look the car over' }).waitFor();
    },
  },
  {
    ...practice,
    name: 'practice-truth',
    open: async (page) => {
      await toTheBench(page);
      for (const [index, dutyPct] of [10, 20, 35, 45, 55, 60].entries())
        await drive(page, dutyPct, index + 1);
      await page.getByRole('button', { name: /^Keep \d/ }).click();
      await page.getByRole('region', { name: 'Advice at each pull' }).waitFor();
    },
  },
];
