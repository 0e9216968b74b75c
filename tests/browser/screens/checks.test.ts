import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedBrowser } from '../shared-browser.js';
import { sharedOrigin } from '../shared-origin.js';
import { violationsOf } from '../violations-of.js';
import { closeDevice } from './close-device.js';
import { coveredFocusOf } from './covered-focus-of.js';
import { cutTextsOf } from './cut-texts-of.js';
import { hiddenControlsOf } from './hidden-controls-of.js';
import { inTime } from './in-time.js';
import { sidewaysOf } from './sideways-of.js';
import { smallTargetsOf } from './small-targets-of.js';

const browser = sharedBrowser();
let page: Page;
beforeAll(async () => {
  page = await browser().newPage({ viewport: { width: 360, height: 600 } });
});
afterAll(() => page.close());

const shown = (body: string): Promise<void> =>
  page.setContent(
    `<!doctype html><html lang="en"><title>Planted</title><body style="margin:0"><main>${body}</main>`,
  );

describe('a planted fault is found:', () => {
  test('a page that is wider than the window', async () => {
    await shown('<h1>Wide</h1><div style="width:380px;height:9px"></div>');
    expect(await sidewaysOf(page)).toEqual(['the page is 380 px wide in 360 px']);
  });

  test.each([
    ['by its own box', '<p style="width:90px;overflow:hidden;white-space:nowrap">a ceiling that matters</p>'],
    [
      'after some lines',
      '<div style="height:20px;overflow:hidden"><p style="margin:0">one</p><p style="margin:0">a ceiling that matters</p></div>',
    ],
    [
      'by the edge of the page',
      '<div style="overflow:clip"><p style="margin-left:340px;width:200px">ceiling</p></div>',
    ],
    ['by its button', '<button style="width:60px;white-space:nowrap">a ceiling that matters</button>'],
    ['by a picture', '<svg width="90" height="20"><text x="60" y="15">a ceiling</text></svg>'],
    ['by its choice', '<select style="width:60px"><option>a ceiling that matters</select>'],
  ])('a text cut off %s', async (_how, body) => {
    await shown(body);
    expect(await cutTextsOf(page)).toHaveLength(1);
    expect((await cutTextsOf(page))[0]).toContain('ceiling');
  });

  test.each([
    [
      'covered by a bar',
      '<button>Go</button><div style="position:fixed;inset:0 0 auto;height:80px;background:#fff">',
    ],
    ['beside the page', '<button style="position:absolute;left:340px;width:60px">Go</button>'],
    [
      'under a layer',
      '<div style="position:relative"><button>Go</button><div style="position:absolute;inset:0">',
    ],
  ])('a control %s', async (_how, body) => {
    await shown(body);
    expect(await hiddenControlsOf(page)).toHaveLength(1);
  });

  const linesOfButtons = Array.from({ length: 40 }, (_, index) => `<p><button>Go ${index}</button></p>`);

  test.each([
    ['above', '<div style="position:sticky;top:0;height:120px;background:#fff">Bar</div>'],
    ['below', '<div style="position:fixed;inset:auto 0 0;height:120px;background:#fff">Bar</div>'],
  ])('a focus under a bar that stands still %s', async (_where, bar) => {
    await shown(`${bar}${linesOfButtons.join('')}<div style="height:200px"></div>`);
    expect((await coveredFocusOf(page)).length).toBeGreaterThan(0);
    await page.addStyleTag({ content: 'html { scroll-padding: 130px 0 }' });
    expect(await coveredFocusOf(page)).toEqual([]);
  });

  test('a target too small for a finger, and one too small for a glove', async () => {
    await shown(
      '<button style="width:20px;height:30px">a</button><button style="width:44px;height:48px">b</button>' +
        '<label><input type="checkbox">a box whose label is pressed, too, is larger than itself</label>',
    );
    expect(await smallTargetsOf(page, 24)).toEqual(['button “a” is 20 by 30 px']);
    expect(await smallTargetsOf(page, 40)).toHaveLength(1);
    expect(await smallTargetsOf(page, 48)).toContain('button “b” is 44 by 48 px');
  });

  test('by axe, too', async () => {
    await shown('<h1>Name</h1><input style="width:90px">');
    expect((await violationsOf(page)).map((one) => one.split(':')[0])).toContain('label');
  });
});

test('what can be read and reached is not called a fault', async () => {
  await shown(
    '<h1>Good</h1><div style="overflow:auto;width:200px" tabindex="0"><p style="width:500px">scrolls to its end</p></div>' +
      '<p class="unseen" style="position:absolute;width:1px;height:1px;overflow:hidden">for screen readers</p>' +
      '<p>In <a href="/x">a sentence</a> a link may be as tall as its line.</p><div style="height:2000px"></div>' +
      '<button style="width:60px;height:60px">At the end</button>',
  );
  expect(await sidewaysOf(page)).toEqual([]);
  expect(await cutTextsOf(page)).toEqual([]);
  expect(await hiddenControlsOf(page)).toEqual([]);
  expect(await coveredFocusOf(page)).toEqual([]);
  expect(await smallTargetsOf(page, 24)).toEqual([]);
});

describe('a look that does not end', () => {
  test('says what it waited for', async () => {
    const never = page.evaluate(() => new Promise(() => undefined));
    await expect(inTime('two frames to be drawn', never, 50)).rejects.toThrow(
      'waited 0.05 s for two frames to be drawn',
    );
    await expect(inTime('one and one', page.evaluate('1 + 1'), 30_000)).resolves.toBe(2);
  });

  test('is not one that closes a page while its document is being loaded', async () => {
    for (let n = 0; n < 5; n += 1) {
      const context = await browser().newContext({ baseURL: sharedOrigin(), serviceWorkers: 'block' });
      const loading = await context.newPage();
      await loading.goto('/sign-in');
      await loading.evaluate('location.reload(); new Promise(() => undefined)').catch(() => undefined);
      await closeDevice(context);
      expect(loading.isClosed()).toBe(true);
    }
  });
});
