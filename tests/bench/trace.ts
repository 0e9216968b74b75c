// npm run bench:trace [-- quick]: how smooth the log screen is. Writes docs/bench/trace.md (not when quick).
import fs from 'node:fs';
import os from 'node:os';
import type { Page } from 'playwright-core';
import { launchChromium } from '../browser/chromium.js';
import { longLog } from '../browser/long-log.js';
import { startProduct } from '../browser/product.js';
import { signIn } from '../browser/sign-in.js';
import { uploadLog } from '../browser/upload-log.js';
import { measureFrames, type FrameTimes } from './trace/measure-frames.js';

const isQuick = process.argv.includes('quick');
const ROWS = isQuick ? 100_000 : 1_000_000;
const CHANNELS = 20;
/** A frame longer than this is seen as a jerk: a tenth of a second, Nielsen, Usability Engineering (1993), 5.5. */
const JERK_MS = 100;

interface Counted {
  requests: number;
  bytes: number;
}

/** Counts what comes in of the traces, as it goes over the wire. */
async function countTiles(page: Page): Promise<Counted> {
  const counted: Counted = { requests: 0, bytes: 0 };
  const session = await page.context().newCDPSession(page);
  const tiles = new Set<string>();
  await session.send('Network.enable');
  session.on('Network.responseReceived', ({ requestId, response }) => {
    if (/\/traces\/[0-9a-f]{16}\//.test(response.url)) tiles.add(requestId);
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    if (!tiles.has(requestId)) return;
    counted.requests += 1;
    counted.bytes += encodedDataLength;
  });
  return counted;
}

const untilDrawn = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () => document.querySelector('[data-testid="traces"]')?.getAttribute('aria-busy') === 'false',
    undefined,
    { timeout: 300_000 },
  );

/** The movements of somebody who looks for something in a log. */
async function moveAbout(page: Page): Promise<FrameTimes[]> {
  const traces = page.getByTestId('traces');
  const box = await traces.boundingBox();
  if (box === null) throw new Error('no traces on the screen');
  const [x, y] = [box.x + box.width / 2, box.y + 200];
  await traces.focus();
  const wheel = async (deltaY: number, count: number): Promise<void> => {
    for (let turn = 0; turn < count; turn += 1) await page.mouse.wheel(0, deltaY);
  };
  const drag = async (): Promise<void> => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 0; step < 120; step += 1) await page.mouse.move(x + 300 * Math.sin(step / 12), y);
    await page.mouse.up();
  };
  await page.keyboard.press('0');
  await untilDrawn(page);
  await page.mouse.move(x, y);
  const frames = [
    await measureFrames(page, 'zooming in from the whole log to samples, by wheel', () => wheel(-120, 60)),
    await measureFrames(page, 'dragging, single samples in sight', drag),
    await measureFrames(page, 'zooming out to the whole log, by wheel', () => wheel(120, 60)),
  ];
  await page.keyboard.press('n');
  await untilDrawn(page);
  frames.push(await measureFrames(page, 'dragging, one pull in sight', drag));
  const walk = async (): Promise<void> => {
    for (let step = 0; step < 120; step += 1) await page.keyboard.press('ArrowRight');
  };
  frames.push(await measureFrames(page, 'cursor by key, one pull in sight', walk));
  await page.getByRole('button', { name: 'Over each other' }).click();
  await untilDrawn(page);
  frames.push(await measureFrames(page, 'dragging, six pulls over each other', drag));
  return frames;
}

const product = await startProduct('demo');
const browser = await launchChromium();
try {
  const { page } = await signIn(browser, product.origin, 'tuner@pullbook.example', {
    viewport: { width: 1440, height: 900 },
  });
  const bytes = longLog(ROWS, CHANNELS);
  const logId = await uploadLog(page, 'bench.csv', bytes);
  const builtFrom = performance.now();
  while ((await page.request.get(`/api/v1/logs/${logId}/traces`)).status() === 202) {
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  const buildS = (performance.now() - builtFrom) / 1000;
  const counted = await countTiles(page);
  const openedFrom = performance.now();
  await page.goto(`/logs/${logId}`);
  await page.getByTestId('traces').waitFor();
  await untilDrawn(page);
  const firstS = (performance.now() - openedFrom) / 1000;
  const first = { ...counted };
  const frames = await moveAbout(page);
  await untilDrawn(page);
  const text = report({ byteCount: bytes.byteLength, buildS, firstS, first, all: counted, frames });
  console.log(text);
  if (!isQuick) fs.writeFileSync(new URL('../../docs/bench/trace.md', import.meta.url), text);
  process.exitCode = frames.some(({ medianMs }) => medianMs > JERK_MS) ? 1 : 0;
} finally {
  await browser.close();
  await product.stop();
}

interface Measured {
  readonly byteCount: number;
  readonly buildS: number;
  readonly firstS: number;
  readonly first: Counted;
  readonly all: Counted;
  readonly frames: readonly FrameTimes[];
}

function report({ byteCount, buildS, firstS, first, all, frames }: Measured): string {
  const kilo = (count: number): string => (count / 1000).toFixed(0);
  return [
    '# The log screen: how smooth it is',
    '',
    `Made by \`npm run bench:trace\` on Node ${process.versions.node}, ${os.availableParallelism()} cores, load ${os.loadavg()[0]?.toFixed(0)} while it ran, in Chromium without a graphics card: read times as upper bounds. A log of ${ROWS} rows and ${CHANNELS} channels, ${(byteCount / 1e6).toFixed(0)} MB of CSV, 1440 by 900 px.`,
    '',
    '| what | figure |',
    '| --- | ---: |',
    `| traces made, once for each log, off the request thread | ${buildS.toFixed(1)} s |`,
    `| from the address to the first whole picture | ${firstS.toFixed(1)} s |`,
    `| fetched for it | ${kilo(first.bytes)} kB in ${first.requests} tiles |`,
    `| fetched in all, with everything below | ${kilo(all.bytes)} kB in ${all.requests} tiles |`,
    '',
    '| movement | frames | median ms | p95 ms | longest ms |',
    '| --- | ---: | ---: | ---: | ---: |',
    ...frames.map(
      ({ name, frameCount, medianMs, p95Ms, longestMs }) =>
        `| ${name} | ${frameCount} | ${medianMs.toFixed(1)} | ${p95Ms.toFixed(1)} | ${longestMs.toFixed(1)} |`,
    ),
    '',
    `Times between animation frames; 16.7 ms is as often as the screen is drawn. The command fails where a median is over ${JERK_MS} ms.`,
    '',
  ].join('\n');
}
