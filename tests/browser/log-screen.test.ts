import fs from 'node:fs';
import papaparse from 'papaparse';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launchChromium } from './chromium.js';
import { cellsOfRow, LONG_LOG, longLog } from './long-log.js';
import { startProduct, type Product } from './product.js';
import { signIn } from './sign-in.js';
import { uploadLog } from './upload-log.js';
import { violationsOf } from './violations-of.js';

/** Enough for every zoom level and five pulls; `npm run bench:trace` takes a million. */
const ROWS = 100_000;
const CHANNELS = 4;
const LAST_S = (ROWS - 1) / LONG_LOG.rateHz;

let product: Product;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let traces: Locator;

beforeAll(async () => {
  product = await startProduct('demo', inject('demoBook'));
  browser = await launchChromium();
  ({ context, page } = await signIn(browser, product.origin, 'tuner@pullbook.example', {
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
  }));
  const logId = await uploadLog(page, 'long day.csv', longLog(ROWS, CHANNELS));
  await page.goto(`/logs/${logId}?pull=3`);
  traces = page.getByTestId('traces');
  await traces.waitFor({ timeout: 120_000 });
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await product?.stop();
});

const cursorS = async (): Promise<number> => Number(await traces.getAttribute('aria-valuenow'));
const told = (): Promise<string> => page.locator('figcaption').innerText();

/** Waits for the frame that shows what was asked for, and until everything in it has come. */
async function untilDrawn(): Promise<void> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  await page.waitForFunction(
    () => document.querySelector('[data-testid="traces"]')?.getAttribute('aria-busy') === 'false',
  );
}

async function press(...keys: readonly string[]): Promise<void> {
  await traces.focus();
  for (const key of keys) await page.keyboard.press(key);
  await untilDrawn();
}

/** How many colours the canvas shows; one or two are an empty sheet. */
const coloursDrawn = (): Promise<number> =>
  traces.locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
    const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    const seen = new Set<number>();
    for (let at = 0; at < pixels.length; at += 4) {
      seen.add(((pixels[at] ?? 0) << 16) | ((pixels[at + 1] ?? 0) << 8) | (pixels[at + 2] ?? 0));
    }
    return seen.size;
  });

describe('the log screen, with a long log', () => {
  test('opens at the asked pull, says what is in it, and draws it', async () => {
    await untilDrawn();
    expect(await page.locator('main').innerText()).toContain('100\u202f000 samples');
    expect(await cursorS()).toBeCloseTo(2 * LONG_LOG.cycleS + LONG_LOG.pullFromS, 1);
    expect(await told()).toMatch(/^Boost, Boost, filtered, Engine speed, Throttle from .* pull 3 from 240/);
    expect(await coloursDrawn()).toBeGreaterThan(20);
  });

  test('goes from pull to pull, to either end and to everything by keys', async () => {
    const start = await cursorS();
    await press('n');
    expect(await cursorS()).toBeCloseTo(start + LONG_LOG.cycleS, 1);
    await press('p', 'p');
    expect(await cursorS()).toBeCloseTo(start - LONG_LOG.cycleS, 1);
    await press('End');
    expect(await cursorS()).toBeCloseTo(LAST_S, 6);
    await press('0');
    await page.getByText(/from 0\.00 to (499\.99|500\.00) s/).waitFor({ timeout: 10_000 });
    expect(await coloursDrawn()).toBeGreaterThan(20);
  });

  test('zooms down to single samples, and the cursor reads what the file says there', async () => {
    await press('Home', 'n', ...Array.from({ length: 16 }, () => '+'));
    // From sample to sample only once they have come.
    await press('ArrowRight');
    const before = await cursorS();
    await press('ArrowRight');
    expect((await cursorS()) - before).toBeCloseTo(1 / LONG_LOG.rateHz, 6);
    const row = Math.round((await cursorS()) * LONG_LOG.rateHz);
    const [, boost, rpm, throttle] = cellsOfRow(row, CHANNELS);
    const values = page.getByRole('region', { name: 'Values at the cursor' });
    const shown = async (name: string): Promise<string> =>
      values
        .getByRole('row', { name: new RegExp(`^${name}`) })
        .first()
        .getByRole('cell')
        .first()
        .innerText();
    await page.waitForFunction(
      (text) =>
        document.querySelector('[data-testid="traces"]')?.getAttribute('aria-valuetext')?.includes(text),
      `Engine speed ${rpm}`,
    );
    expect(Number(await shown('Boost'))).toBeCloseTo(Number(boost), 1);
    expect(await shown('Engine speed')).toBe(rpm);
    expect(Number(await shown('Throttle'))).toBe(Number(throttle));
  });

  test('is moved by dragging and zoomed by the wheel', async () => {
    await press('0', 'Home', 'n');
    const box = await traces.boundingBox();
    if (box === null) throw new Error('no traces on the screen');
    const [x, y] = [box.x + box.width / 2, box.y + 200];
    const width = async (): Promise<[number, number]> => {
      const [, from = '', to = ''] = /from ([\d.]+) to ([\d.]+) s/.exec(await told()) ?? [];
      return [Number(from), Number(to)];
    };
    const [from, to] = await width();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 200, y, { steps: 5 });
    await page.mouse.up();
    await untilDrawn();
    const moved = await width();
    expect(moved[0]).toBeLessThan(from - 0.5);
    expect(moved[1] - moved[0]).toBeCloseTo(to - from, 1);
    await page.mouse.wheel(0, -600);
    await untilDrawn();
    const zoomed = await width();
    expect(zoomed[1] - zoomed[0]).toBeLessThan((to - from) / 1.5);
  });

  test('lays pulls over each other from the same moment', async () => {
    await page.getByRole('button', { name: 'Over each other' }).click();
    await page.getByRole('combobox').selectOption('target');
    await untilDrawn();
    expect(await told()).toMatch(/laid over each other where 90 % of target is first reached/);
    await page.getByText('90 % of its own settled boost stands in').waitFor();
    expect(await coloursDrawn()).toBeGreaterThan(20);
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Along the log' }).click();
    await untilDrawn();
  });

  test('saves the picture, and the samples as CSV that reads back as the same numbers', async () => {
    await press('0', 'Home', 'n');
    const save = async (name: string): Promise<Buffer> => {
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name }).click();
      return fs.readFileSync(await (await coming).path());
    };
    expect((await save('This picture (PNG)')).subarray(1, 4).toString()).toBe('PNG');
    const text = (await save('Its samples (CSV)')).toString('utf8');
    const { data } = papaparse.parse<string[]>(text, { skipEmptyLines: true });
    expect(data[0]).toEqual([
      'Time (s)',
      'Boost (kPa)',
      'Boost, filtered (kPa)',
      'Engine speed (r/min)',
      'Throttle (%)',
    ]);
    expect(data.length).toBeGreaterThan(1000);
    for (const [timeS = '', boost = '', , rpm = ''] of data.slice(1)) {
      const row = Math.round(Number(timeS) * LONG_LOG.rateHz);
      const [, wantBoost, wantRpm] = cellsOfRow(row, CHANNELS);
      if (Number(boost) !== Number(wantBoost) || Number(rpm) !== Number(wantRpm)) {
        expect.fail(`row ${row}: ${boost}, ${rpm}, not ${wantBoost}, ${wantRpm}`);
      }
    }
  });

  test('takes pulls of the log into the book, whenever it is opened', async () => {
    await page.getByRole('button', { name: 'Take 5 pulls into the book' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('Duty that was set, %').fill('30');
    await sheet.getByRole('checkbox', { name: 'Pull at 440.0 s' }).uncheck();
    await sheet.getByRole('button', { name: 'Take in 4 pulls' }).click();
    await sheet.waitFor({ state: 'detached' });
    await page.getByRole('link', { name: /^In the book: .*, pull \d+, duty 30 %$/ }).waitFor();
    await page.getByRole('button', { name: 'Take the other 1 pull into the book' }).waitFor();
  });

  test('has no accessibility fault, by day and by night, and fits a phone', async () => {
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOf(page)).toEqual([]);
    await page.setViewportSize({ width: 360, height: 780 });
    await untilDrawn();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    expect(await violationsOf(page)).toEqual([]);
    await context.close();
  });
});
