import type { Page } from 'playwright-core';
import type { Screen } from './screen.js';

const desk = { who: 'desk' } as const;

async function toIntake(page: Page): Promise<void> {
  await page.goto('/intake');
  await page.getByRole('heading', { name: 'Take in a car' }).waitFor();
}

interface Taken {
  readonly name: string;
  readonly plate: string;
}

async function fillIntake(page: Page, { name, plate }: Taken): Promise<void> {
  await toIntake(page);
  await page.getByLabel('Name', { exact: false }).first().fill(name);
  await page.getByLabel('Plate', { exact: false }).fill(plate);
  await page.getByLabel('Model', { exact: false }).first().fill('Estate, 2.0 turbo');
}

async function find(page: Page, text: string): Promise<void> {
  await page.goto('/board');
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await page.getByLabel('Plate, name, telephone, visit number or page').fill(text);
}

/** What the front desk meets beside the plain pages: faults, doubles, the car that is in, the yard as a table. */
export const deskScreens: readonly Screen[] = [
  {
    ...desk,
    name: 'board-table',
    route: '/board',
    open: async (page) => {
      await page.goto('/board');
      await page.getByRole('button', { name: 'Table' }).click();
      await page.getByRole('region', { name: 'Cars as a table' }).waitFor();
    },
  },
  {
    ...desk,
    name: 'board-move',
    route: '/board',
    within: '[data-list]',
    open: async (page) => {
      await page.goto('/board');
      await page
        .getByRole('button', { name: /^Move / })
        .first()
        .click();
      await page.getByRole('button', { name: /here now/ }).waitFor();
    },
    afterResize: async (page) => {
      const here = page.getByRole('button', { name: /here now/ });
      if (await here.isVisible()) return;
      await page
        .getByRole('button', { name: /^Move / })
        .first()
        .click();
      await here.waitFor();
    },
  },
  {
    ...desk,
    name: 'intake-faults',
    route: '/intake',
    open: async (page) => {
      await toIntake(page);
      await page.getByLabel('Email', { exact: true }).fill('ottilie at home');
      await page.getByRole('button', { name: 'Take in this car' }).click();
      await page.locator('[aria-invalid="true"]').first().waitFor();
    },
  },
  {
    ...desk,
    name: 'intake-double',
    route: '/intake',
    open: async (page) => {
      const cars = (await (await page.request.get('/api/v1/cars')).json()) as {
        items: { plate: string; customerName: string }[];
      };
      const [known] = cars.items;
      if (known === undefined) throw new Error('the demo has no car');
      await fillIntake(page, { name: known.customerName, plate: known.plate });
      await page.getByText('This car may be in the book already').waitFor();
      await page.getByText('In the book already?').waitFor();
    },
  },
  {
    ...desk,
    name: 'intake-done',
    route: '/intake',
    open: async (page) => {
      await fillIntake(page, {
        name: 'Ottilie Quarn',
        plate: `SCR ${Date.now() % 100_000}`,
      });
      await page.getByRole('button', { name: 'Take in this car' }).click();
      await page.getByRole('heading', { name: /is in the book/ }).waitFor();
    },
  },
  {
    ...desk,
    name: 'finder',
    route: '/board',
    open: async (page) => {
      await find(page, 'e');
      await page.getByRole('option').nth(3).waitFor();
    },
  },
  {
    ...desk,
    name: 'finder-nothing',
    route: '/board',
    open: async (page) => {
      await find(page, 'qqqq');
      await page.getByText(/Nothing in the book goes by/).waitFor();
    },
  },
];
