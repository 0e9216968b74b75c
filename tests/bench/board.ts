// npm run bench:board [-- quick]: how the board bears a yard of 2,000 visits. Writes docs/bench/board.md (not when quick).
import fs from 'node:fs';
import os from 'node:os';
import type { Browser, Page } from 'playwright-core';
import { launchChromium } from '../browser/chromium.js';
import { startProduct } from '../browser/product.js';
import { signIn } from '../browser/sign-in.js';
import { fillYard } from './board/fill-yard.js';
import { readTrace, traceCategories, type TraceFigures } from './board/read-trace.js';

const isQuick = process.argv.includes('quick');
const VISITS = isQuick ? 200 : 2000;
const USABLE_MS = 1000;
const FILTER_MS = 100;

const cards = (page: Page) => page.getByRole('listitem').filter({ hasText: /YD \d{4}/ });

/** From the press on the link to the first frame with cards that can be opened and a filter that can be typed into. */
async function timeNavigation(page: Page): Promise<number> {
  await page.goto('/customers');
  await page.getByRole('heading', { name: 'Customers' }).waitFor();
  await page.waitForLoadState('networkidle');
  const started = await page.evaluate(() => performance.now());
  await page.getByRole('link', { name: 'Board', exact: true }).click();
  await page.waitForFunction(() => document.querySelectorAll('main li a[href^="/visits/"]').length >= 20);
  return page.evaluate(
    (from) =>
      new Promise<number>((resolve) => requestAnimationFrame(() => resolve(performance.now() - from))),
    started,
  );
}

async function traced(browser: Browser, page: Page, act: () => Promise<void>): Promise<TraceFigures> {
  await browser.startTracing(page, { categories: traceCategories });
  await act();
  return readTrace(await browser.stopTracing());
}

/** Types a plate key by key, as a person at the telephone. */
async function typePlate(page: Page, plate: string): Promise<void> {
  await page.getByRole('searchbox').first().focus();
  for (const key of plate) {
    await page.keyboard.press(key);
    await page.waitForTimeout(120);
  }
  await page.waitForTimeout(600);
}

/** From the last key to the only card that matches, one that was not at hand before. */
async function timeFind(page: Page, plate: string): Promise<number> {
  const box = page.getByRole('searchbox').first();
  await box.fill('');
  await page.waitForTimeout(600);
  const started = performance.now();
  await box.fill(plate);
  await page.waitForFunction(() => document.querySelectorAll('main li a[href^="/visits/"]').length === 1);
  return performance.now() - started;
}

async function wheelDown(page: Page): Promise<void> {
  await page.mouse.move(700, 600);
  for (let turn = 0; turn < 40; turn += 1) {
    await page.mouse.wheel(0, 120);
    await page.waitForTimeout(33);
  }
}

async function timeBoardApi(page: Page): Promise<number> {
  const started = performance.now();
  const answer = await page.request.get('/api/v1/board?perStage=20');
  if (!answer.ok()) throw new Error(`the board said ${answer.status()}`);
  return performance.now() - started;
}

const product = await startProduct('demo');
const browser = await launchChromium();
try {
  const { page } = await signIn(browser, product.origin, 'owner@pullbook.example', {
    viewport: { width: 1440, height: 900 },
  });
  await fillYard(product.dataDir, VISITS);
  const coldMs = await timeNavigation(page);
  const warmMs = [await timeNavigation(page), await timeNavigation(page), await timeNavigation(page)];
  const apiMs = [await timeBoardApi(page), await timeBoardApi(page), await timeBoardApi(page)];
  const idle = await traced(browser, page, () => page.waitForTimeout(1500));
  await timeNavigation(page);
  const typing = await traced(browser, page, () => typePlate(page, 'yd01'));
  const findMs = await timeFind(page, `yd${String(VISITS - 3).padStart(4, '0')}`);
  await page.getByRole('searchbox').first().fill('');
  await page.waitForTimeout(800);
  const scrolling = await traced(browser, page, () => wheelDown(page));
  for (let press = 0; press < 2; press += 1) {
    await page
      .getByRole('button', { name: /^Show more/ })
      .first()
      .click();
    await page.waitForTimeout(2500);
  }
  await page.evaluate(() => window.scrollTo(0, 0));
  const shownCount = await cards(page).count();
  const longScroll = await traced(browser, page, () => wheelDown(page));
  const text = report({ coldMs, warmMs, apiMs, idle, typing, findMs, scrolling, longScroll, shownCount });
  console.log(text);
  if (!isQuick) fs.writeFileSync(new URL('../../docs/bench/board.md', import.meta.url), text);
  const slowestKeyMs = typing.interactionsMs[0] ?? 0;
  process.exitCode = Math.max(...warmMs) > USABLE_MS || slowestKeyMs > FILTER_MS ? 1 : 0;
} finally {
  await browser.close();
  await product.stop();
}

interface Measured {
  readonly coldMs: number;
  readonly warmMs: readonly number[];
  readonly apiMs: readonly number[];
  readonly idle: TraceFigures;
  readonly typing: TraceFigures;
  readonly findMs: number;
  readonly scrolling: TraceFigures;
  readonly longScroll: TraceFigures;
  readonly shownCount: number;
}

function report(m: Measured): string {
  const list = (values: readonly number[]): string => values.map((value) => value.toFixed(0)).join(', ');
  const frames = ({ drawnCount, droppedCount, longestTaskMs }: TraceFigures): string =>
    `${drawnCount} drawn, ${droppedCount} dropped | ${longestTaskMs.toFixed(0)} ms`;
  return [
    `# The board with ${VISITS} visits`,
    '',
    `Made by \`npm run bench:board\` on Node ${process.versions.node}, ${os.availableParallelism()} cores, load ${os.loadavg()[0]?.toFixed(1)} while it ran, in Chromium without a graphics card at 1440 by 900 px: read times as upper bounds. ${VISITS} invented visits, none collected, a fifth at each stage, two presets each, seven pulls for each preset that has been on test. Lanes bring 20 cards each, those wanted soonest first, and more when asked.`,
    '',
    '| what | figure |',
    '| --- | --- |',
    `| from the press on Board to cards that can be opened, first time after the yard was filled: no advice is known yet | ${m.coldMs.toFixed(0)} ms |`,
    `| the same again, three times (at most ${USABLE_MS} ms) | ${list(m.warmMs)} ms |`,
    `| of that the server, three times | ${list(m.apiMs)} ms |`,
    `| a key in the filter to the frame that shows its effect, slowest first (at most ${FILTER_MS} ms; Chromium rounds to 8 ms) | ${list(m.typing.interactionsMs.slice(0, 8))} ms |`,
    `| whole plate typed at once to the one car that matches, fetched from among all ${VISITS} | ${m.findMs.toFixed(0)} ms, 150 ms of it the pause that is waited for |`,
    '',
    '| frames, by the tracing of the browser | | longest task |',
    '| --- | --- | ---: |',
    `| standing still for 1.5 s, for comparison | ${frames(m.idle)} |`,
    `| typing four keys | ${frames(m.typing)} |`,
    `| forty turns of the wheel over the first lanes | ${frames(m.scrolling)} |`,
    `| the same with ${m.shownCount} cards brought in | ${frames(m.longScroll)} |`,
    '',
  ].join('\n');
}
