import type { Page } from 'playwright-core';
import { findCard } from '../find-card.js';
import { collectedVisitId, customerIdOf, logPath, reportPath } from './places.js';
import type { Screen } from './screen.js';

const owner = { who: 'owner', isPage: true } as const;

const heading = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('heading', { name }).first().waitFor();

/** Goes to an address and waits for a heading. */
const at = (address: string, name: string | RegExp) => async (page: Page) => {
  await page.goto(address);
  await heading(page, name);
};

/** Every page of the dashboard as a person finds it in the demo workshop, and the customer's report. */
export const pageScreens: readonly Screen[] = [
  { name: 'start', route: '/', who: 'owner', open: at('/', 'Board') },
  { name: 'sign-in', route: '/sign-in', who: 'nobody', isPage: true, open: at('/sign-in', /./) },
  { name: 'without-network', route: '/without-network', who: 'nobody', open: at('/without-network', /./) },
  { name: 'words', route: '/words', who: 'nobody', isPage: true, open: at('/words', 'Words') },
  {
    ...owner,
    name: 'board',
    route: '/board',
    open: async (page) => {
      await page.goto('/board');
      await page
        .getByRole('button', { name: /^Move / })
        .first()
        .waitFor();
    },
  },
  { ...owner, name: 'intake', route: '/intake', who: 'desk', open: at('/intake', 'Take in a car') },
  {
    ...owner,
    name: 'visit',
    route: '/visits/[id]',
    isForGloves: true,
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}`);
      await page.getByText('Chance of passing the ceiling').first().waitFor();
    },
  },
  {
    ...owner,
    name: 'visit-stopped',
    route: '/visits/[id]',
    isForGloves: true,
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /stop/i)).visitId}`);
      await heading(page, /Stop/);
    },
  },
  {
    ...owner,
    name: 'visit-about',
    route: '/visits/[id]/about',
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}/about`);
      await page.getByLabel('Wishes').waitFor();
    },
  },
  {
    name: 'visit-closed',
    route: '/visits/[id]',
    who: 'tuner',
    isForGloves: true,
    open: async (page) => {
      await page.goto(`/visits/${await collectedVisitId(page)}`);
      await heading(page, 'This visit is closed');
    },
  },
  {
    name: 'visit-of-desk',
    route: '/visits/[id]',
    who: 'desk',
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}`);
      await page.getByLabel('Wishes').waitFor();
    },
  },
  {
    ...owner,
    name: 'sign-off',
    route: '/visits/[id]/sign-off',
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /report/i)).visitId}/sign-off`);
      await heading(page, /Signed off and sealed/);
    },
  },
  {
    ...owner,
    name: 'log',
    route: '/logs/[id]',
    open: async (page) => {
      await page.goto(await logPath(page, (await findCard(page, /^next pull/i)).visitId));
      await page.locator('[data-testid="traces"][aria-busy="false"]').waitFor();
    },
  },
  { ...owner, name: 'logs', route: '/logs', open: at('/logs', 'Logs') },
  {
    ...owner,
    name: 'car',
    route: '/cars/[id]',
    open: async (page) => {
      await page.goto(`/cars/${(await findCard(page, /^next pull/i)).carId}`);
      await page
        .getByRole('button', { name: /^Revisions of/ })
        .first()
        .waitFor();
    },
  },
  {
    ...owner,
    name: 'engine',
    route: '/cars/[id]/engine',
    open: async (page) => {
      await page.goto(`/cars/${(await findCard(page, /^next pull/i)).carId}/engine`);
      await heading(page, 'What this rests on');
    },
  },
  {
    ...owner,
    name: 'outlook',
    route: '/cars/[id]/outlook',
    open: async (page) => {
      await page.goto(`/cars/${(await findCard(page, /^drift alarm/)).carId}/outlook`);
      await page
        .getByRole('img', { name: /^Forecast/ })
        .first()
        .waitFor();
    },
  },
  {
    ...owner,
    name: 'compare',
    route: '/cars/[id]/compare',
    open: async (page) => {
      await page.goto(`/cars/${(await findCard(page, /^drift alarm/)).carId}/compare`);
      await page.getByRole('table').first().waitFor();
    },
  },
  { ...owner, name: 'cars', route: '/cars', open: at('/cars', 'Cars') },
  { ...owner, name: 'customers', route: '/customers', open: at('/customers', 'Customers') },
  {
    ...owner,
    name: 'customer',
    route: '/customers/[id]',
    open: async (page) => {
      await page.goto(
        `/customers/${await customerIdOf(page, (await findCard(page, /^next pull/i)).visitId)}`,
      );
      await heading(page, /./);
    },
  },
  {
    ...owner,
    name: 'controllers',
    route: '/controllers',
    open: at('/controllers', 'Three slots, open loop'),
  },
  { ...owner, name: 'workshop', route: '/workshop', open: at('/workshop', 'Team') },
  {
    ...owner,
    name: 'workshop-checklist',
    route: '/workshop',
    open: async (page) => {
      await page.goto('/workshop');
      await page.getByRole('button', { name: 'Change checklist' }).click();
      await page.getByRole('button', { name: 'Add an item of our own' }).click();
      await page.getByLabel('Item 8', { exact: true }).waitFor();
    },
  },
  {
    name: 'workshop-of-desk',
    route: '/workshop',
    who: 'desk',
    open: at('/workshop', 'Checklist of the sign-off'),
  },
  {
    name: 'visit-word',
    route: '/visits/[id]',
    who: 'tuner',
    isForGloves: true,
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}`);
      await page.getByRole('button', { name: /^Chance of passing the ceiling/ }).click();
      await page.getByRole('dialog').waitFor();
    },
  },
  {
    ...owner,
    name: 'report',
    route: null,
    open: async (page) => page.goto(await reportPath(page, (await findCard(page, /report/i)).visitId)),
  },
];
