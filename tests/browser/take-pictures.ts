// npm run docs:pictures: pictures of the screens from a running demo, into docs/pictures.
import fs from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchChromium } from './chromium.js';
import { findCard } from './find-card.js';
import { startProduct } from './product.js';
import { signIn } from './sign-in.js';

const OWNER = 'owner@pullbook.example';
const folder = path.resolve(import.meta.dirname, '../../docs/pictures');
const sizes = {
  phone: { width: 360, height: 780 },
  tablet: { width: 1180, height: 820 },
  desktop: { width: 1440, height: 900 },
} as const;
type Size = keyof typeof sizes;

interface Shot {
  readonly name: string;
  readonly path: string;
}

interface Look {
  readonly size: Size;
  readonly scheme: 'light' | 'dark';
}

/** The screens worth a picture, with the demo's own records in their addresses. */
async function chooseShots(page: Page): Promise<Shot[]> {
  const driven = await findCard(page, /^next pull/i);
  const stopped = await findCard(page, /stop/i);
  const ready = await findCard(page, /report/i);
  const drifted = await findCard(page, /^drift alarm/);
  return [
    { name: 'board', path: '/board' },
    { name: 'intake', path: '/intake' },
    { name: 'visit', path: `/visits/${driven.visitId}` },
    { name: 'visit-about', path: `/visits/${driven.visitId}/about` },
    { name: 'visit-stopped', path: `/visits/${stopped.visitId}` },
    { name: 'sign-off', path: `/visits/${ready.visitId}/sign-off` },
    { name: 'log', path: await logPath(page, driven.visitId) },
    { name: 'logs', path: '/logs' },
    { name: 'car', path: `/cars/${driven.carId}` },
    { name: 'engine', path: `/cars/${driven.carId}/engine` },
    { name: 'outlook', path: `/cars/${drifted.carId}/outlook` },
    { name: 'compare', path: `/cars/${drifted.carId}/compare` },
    { name: 'cars', path: '/cars' },
    { name: 'customers', path: '/customers' },
    { name: 'controllers', path: '/controllers' },
    { name: 'workshop', path: '/workshop' },
    { name: 'report', path: await reportPath(page, ready.visitId) },
  ];
}

/** The newest log of a visit. */
async function logPath(page: Page, visitId: string): Promise<string> {
  const itemsOf = async (path: string): Promise<readonly { id: string }[]> => {
    const answer = await page.request.get(`/api/v1${path}`);
    return ((await answer.json()) as { items: { id: string }[] }).items;
  };
  const session = (await itemsOf(`/visits/${visitId}/tuning-sessions`)).at(-1);
  const log = session && (await itemsOf(`/tuning-sessions/${session.id}/logs`)).at(-1);
  if (log === undefined) throw new Error('the demo has no log to take a picture of');
  return `/logs/${log.id}`;
}

async function reportPath(page: Page, visitId: string): Promise<string> {
  const made = await page.request.post(`/api/v1/visits/${visitId}/report`, {
    headers: { 'content-type': 'application/json' },
    data: {},
  });
  if (!made.ok()) throw new Error(`no report link: ${made.status()} ${await made.text()}`);
  return ((await made.json()) as { url: string }).url;
}

/** Longest wait for a page to come to rest, and how long it has to stay so, ms. */
const LONGEST_MS = 30_000;
const QUIET_MS = 1500;

/** Waits until nothing has been on its way for a while. */
async function untilQuiet(page: Page): Promise<void> {
  const end = Date.now() + LONGEST_MS;
  let quietSince = Date.now();
  while (Date.now() < end && Date.now() - quietSince < QUIET_MS) {
    await page.waitForTimeout(100);
    if ((await page.locator('[aria-busy="true"]').count()) > 0) quietSince = Date.now();
  }
}

async function take(browser: Browser, origin: string, look: Look, shots: readonly Shot[]): Promise<void> {
  const { context, page } = await signIn(browser, origin, OWNER, {
    viewport: sizes[look.size],
    colorScheme: look.scheme,
  });
  for (const shot of shots) {
    await page.goto(shot.path);
    await page.waitForLoadState('load');
    await untilQuiet(page);
    await page.screenshot({ path: path.join(folder, `${shot.name}-${look.size}-${look.scheme}.png`) });
  }
  await context.close();
}

const product = await startProduct('demo');
const browser = await launchChromium();
try {
  fs.mkdirSync(folder, { recursive: true });
  const { page } = await signIn(browser, product.origin, OWNER);
  const shots = await chooseShots(page);
  for (const size of Object.keys(sizes) as Size[]) {
    for (const scheme of ['light', 'dark'] as const) {
      await take(browser, product.origin, { size, scheme }, shots);
    }
  }
} finally {
  await browser.close();
  await product.stop();
}
