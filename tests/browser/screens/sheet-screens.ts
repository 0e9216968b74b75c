import type { Page } from 'playwright-core';
import { findCard } from '../find-card.js';
import { visitOnTest } from '../visit-on-test.js';
import type { Screen } from './screen.js';

const owner = { who: 'owner' } as const;

/** Goes to a place of the demo's car on test and presses something that lays a sheet over it. */
const sheetOfCar = (place: string, button: string | RegExp) => async (page: Page) => {
  await page.goto(`/cars/${(await findCard(page, /^next pull/i)).carId}${place}`);
  await pressFor(page, button);
};

const sheetAt = (address: string, button: string | RegExp) => async (page: Page) => {
  await page.goto(address);
  await pressFor(page, button);
};

async function pressFor(page: Page, button: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: button }).first().click();
  await page.getByRole('dialog').getByRole('button', { name: /Close/ }).first().waitFor();
  await page
    .getByRole('dialog')
    .getByRole('status', { name: /^(Opening|Loading)/ })
    .waitFor({ state: 'detached' });
}

/** Sheets that lie over a page, and forms that wait in it. */
export const sheetScreens: readonly Screen[] = [
  { ...owner, name: 'car-revisions', route: '/cars/[id]', open: sheetOfCar('', /^Revisions of/) },
  { ...owner, name: 'car-add-preset', route: '/cars/[id]', open: sheetOfCar('', 'Add preset') },
  { ...owner, name: 'car-goal', route: '/cars/[id]', open: sheetOfCar('', /^Change target and ceiling/) },
  {
    ...owner,
    name: 'engine-data',
    route: '/cars/[id]/engine',
    open: sheetOfCar('/engine', 'Enter engine data'),
  },
  {
    ...owner,
    name: 'engine-map',
    route: '/cars/[id]/engine',
    open: sheetOfCar('/engine', /^(Enter a|Change the) map/),
  },
  {
    ...owner,
    name: 'controller-new',
    route: '/controllers',
    open: sheetAt('/controllers', 'Describe a controller'),
  },
  { ...owner, name: 'person-new', route: '/workshop', open: sheetAt('/workshop', 'Add person') },
  {
    ...owner,
    name: 'token-made',
    route: '/workshop',
    open: async (page) => {
      await page.goto('/workshop');
      await page.getByLabel('What is it for?').fill('Nightly copy');
      await page.getByRole('button', { name: 'Make token' }).click();
      await page.getByText('Copy it now').waitFor();
    },
  },
  {
    ...owner,
    name: 'sign-off-open',
    route: '/visits/[id]/sign-off',
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}/sign-off`);
      await page.getByRole('button', { name: 'Sign off and seal' }).waitFor();
    },
  },
  {
    ...owner,
    name: 'sign-off-note',
    route: '/visits/[id]/sign-off',
    open: async (page) => {
      await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}/sign-off`);
      await page
        .getByRole('button', { name: /^Note on/ })
        .first()
        .click();
      await page
        .getByLabel(/^Note on/)
        .first()
        .waitFor();
    },
  },
  {
    ...owner,
    name: 'sign-off-faults',
    route: '/visits/[id]/sign-off',
    open: async (page) => {
      const own = await visitOnTest(page.request, 'SCR 602');
      await page.goto(`/visits/${own.visitId}/sign-off`);
      await page.getByRole('button', { name: 'Sign off and seal' }).click();
      await page.locator('[aria-invalid="true"]').first().waitFor();
    },
  },
  {
    ...owner,
    name: 'not-found',
    route: null,
    open: async (page) => {
      await page.goto('/no-such-place');
      await page.getByRole('heading', { name: 'No such page in this book' }).waitFor();
    },
  },
  {
    ...owner,
    name: 'car-not-found',
    route: '/cars/[id]',
    open: async (page) => {
      await page.goto('/cars/aaaaaaaaaaaaaaaaaaaaaaaaa');
      await page.getByRole('alert').first().waitFor();
    },
  },
  {
    ...owner,
    name: 'board-out-of-reach',
    route: '/board',
    open: async (page) => {
      await page.route('**/api/v1/board*', (route) => route.fulfill({ status: 500, json: {} }));
      await page.goto('/board');
      await page.getByRole('button', { name: 'Try again' }).waitFor();
    },
  },
  {
    name: 'sign-in-wrong',
    route: '/sign-in',
    who: 'nobody',
    open: async (page) => {
      await page.goto('/sign-in');
      await page.getByLabel('Email').fill('tuner@pullbook.example');
      await page.getByLabel('Password').fill('not the one');
      await page.getByRole('button', { name: 'Sign in', exact: true }).click();
      await page.getByRole('alert').first().waitFor();
    },
  },
  {
    name: 'first-owner',
    route: '/sign-in',
    who: 'nobody',
    open: async (page) => {
      await page.route('**/api/v1/setup', (route) =>
        route.fulfill({ json: { needsFirstOwner: true, demo: false } }),
      );
      await page.goto('/sign-in');
      await page.getByRole('heading', { name: 'Open a new book' }).waitFor();
    },
  },
];
