import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';

const origin = sharedOrigin();
const browser = sharedBrowser();
let page: Page;

beforeAll(async () => {
  ({ page } = await signIn(browser(), origin, 'tuner@pullbook.example'));
});

async function openCar(plate: string): Promise<void> {
  const answer = await page.request.get('/api/v1/cars?limit=50');
  const { items } = (await answer.json()) as { items: { id: string; plate: string }[] };
  const car = items.find((one) => one.plate === plate);
  if (car === undefined) throw new Error(`the demo has no car ${plate}`);
  await page.goto(`/cars/${car.id}`);
}

const binding = () => page.locator('[data-state="binding"]');
const points = [
  ...['60000,0.04,1.4', '60000,0.08,1.36', '60000,0.12,1.2'],
  ...['100000,0.06,2', '100000,0.14,1.92', '100000,0.2,1.6'],
  ...['140000,0.1,2.9', '140000,0.2,2.75', '140000,0.28,2.2'],
];

test('injectors bind once all that their limit rests on is entered, and the car says so', async () => {
  await openCar('PB 101');
  await page.getByRole('link', { name: 'Engine, injectors and compressor map' }).click();
  await page.locator('[data-state="estimate"]').filter({ hasText: 'injectors' }).waitFor();
  expect(await binding().innerText()).toContain('engine');
  await page.getByRole('button', { name: 'Enter engine data' }).click();
  const known = {
    ...{ 'Volumetric efficiency': '92', 'Lost in the air filter': '2', 'Compressor efficiency': '72' },
    ...{ 'Lost in the charge cooler': '5', 'Air-fuel ratio at full load': '11.8', 'Fuel density': '0.745' },
    ...{ 'Air temperature': '-10', Height: '100', 'Flow of one': '350' },
  };
  for (const [label, value] of Object.entries(known)) await page.getByLabel(label).fill(value);
  await page.getByRole('button', { name: 'Save engine data' }).click();
  await binding().filter({ hasText: 'injectors' }).waitFor();
  await page.getByRole('link', { name: 'back to the car' }).click();
  await page.getByText('This car’s lowest limit: injectors').waitFor();
});

test('a map with faults is refused row by row; a good one is drawn with the engine’s lines on it', async () => {
  await page.getByRole('link', { name: 'Engine, injectors and compressor map' }).click();
  await page.getByRole('button', { name: 'Enter a map' }).click();
  const csv = page.getByLabel('Points, as CSV');
  const keep = page.getByRole('button', { name: 'Keep the map' });
  await csv.fill(['speed,flow,pressure ratio', '60000,x,1.5', ...points.slice(1)].join('\n'));
  await keep.click();
  await page.getByRole('alert').filter({ hasText: "row 2, column 'flow'" }).waitFor();
  await csv.fill(['speed,flow,pressure ratio', ...points].join('\n'));
  await keep.click();
  const picture = page.getByRole('img', { name: /3 speed lines from 60000 to 140000 r.min/ });
  await picture.waitFor();
  expect(await picture.getAttribute('aria-label')).toContain('A Everyday, target');
});

test('pulls from logs lie on the map of their compressor', async () => {
  await openCar('PB 188');
  await page.getByRole('link', { name: 'Engine, injectors and compressor map' }).click();
  await page.getByRole('img', { name: /3 pulls on it/ }).waitFor();
  expect(await page.getByRole('listitem').filter({ hasText: 'inside at its peak' }).count()).toBe(3);
});
