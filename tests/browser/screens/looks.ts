import type { Page } from 'playwright-core';
import { violationsOf } from '../violations-of.js';
import { coveredFocusOf } from './covered-focus-of.js';
import { cutTextsOf } from './cut-texts-of.js';
import { hiddenControlsOf } from './hidden-controls-of.js';
import { inTime } from './in-time.js';
import type { Screen } from './screen.js';
import { sidewaysOf } from './sideways-of.js';
import { smallTargetsOf } from './small-targets-of.js';

/** Least size of a target in the hand of somebody with gloves, and of every other (WCAG 2.5.8), px. */
const GLOVE_PX = 48;
const FINGER_PX = 24;

interface Look {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly scheme?: 'light' | 'dark';
  /** Size of text alone, as a reader sets it in the browser; 1 is as it comes. */
  readonly textRatio?: number;
}

const tablet: Look = { name: 'tablet by day', width: 1180, height: 820, scheme: 'light' };
const phone: Look = { name: 'phone by night', width: 360, height: 780, scheme: 'dark' };
/** A window of 1280 by 800 px at 200 % has room for half as many CSS pixels, WCAG 1.4.4 and 1.4.10. */
const zoomed: Look = { name: '200 % zoom', width: 640, height: 400, scheme: 'light' };
const largeText: Look = { name: 'text at 200 %', width: 1280, height: 800, textRatio: 2 };

async function take(page: Page, { width, height, scheme, textRatio = 1 }: Look): Promise<void> {
  await page.setViewportSize({ width, height });
  if (scheme !== undefined) await page.emulateMedia({ colorScheme: scheme });
  await page.evaluate(async (ratio) => {
    document.documentElement.style.fontSize = ratio === 1 ? '' : `${ratio * 100}%`;
    window.scrollTo(0, 0);
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    await frame();
    await frame();
  }, textRatio);
}

/** What loads when somebody scrolls to it is looked at too. */
async function scrollToAll(page: Page): Promise<void> {
  const toCome = page.locator('[data-kept-free]');
  for (let left = await toCome.count(); left > 0; left = await toCome.count()) {
    // What is near already may have come since it was counted.
    await page.evaluate(() =>
      document.querySelector('[data-kept-free]')?.scrollIntoView({ block: 'center' }),
    );
    await page.waitForFunction((most) => document.querySelectorAll('[data-kept-free]').length < most, left);
  }
}

type Check = readonly [what: string, find: () => Promise<string[]>];

function checksOf(page: Page, screen: Screen, look: Look): Check[] {
  const least = screen.isForGloves === true ? GLOVE_PX : FINGER_PX;
  const byAxe: Check = ['axe to end', () => violationsOf(page)];
  const targets: Check = ['targets to be measured', () => smallTargetsOf(page, least)];
  const focus: Check = ['what has the focus to be seen', () => coveredFocusOf(page, screen.within)];
  return [
    ...(look === tablet || look === phone ? [byAxe] : []),
    ['what lies at the side to be found', () => sidewaysOf(page)],
    ['texts to be measured', () => cutTextsOf(page)],
    ...(look === largeText ? [] : [targets]),
    ['controls to be reached', () => hiddenControlsOf(page, screen.within)],
    ...(look === phone || look === zoomed ? [focus] : []),
  ];
}

/** Everything that the four looks find wrong with a screen as it stands; empty where nothing is. */
export async function faultsOf(page: Page, screen: Screen): Promise<string[]> {
  await scrollToAll(page);
  const faults: string[] = [];
  for (const look of [tablet, phone, zoomed, largeText]) {
    await inTime(`${look.name}: the window to be resized and two frames to be drawn`, take(page, look));
    await screen.afterResize?.(page);
    for (const [what, find] of checksOf(page, screen, look)) {
      const found = await inTime(`${look.name}: ${what}`, find());
      faults.push(...found.map((one) => `${look.name}: ${one}`));
    }
  }
  return faults;
}
