// npm run icons: draws the icons of the installed dashboard from its SVG, into apps/web/public/icons.
import fs from 'node:fs';
import path from 'node:path';
import { launchChromium } from './chromium.js';

const web = path.resolve(import.meta.dirname, '../../apps/web');
const folder = path.join(web, 'public/icons');
const ground = '#f6f2e9';
const svg = fs.readFileSync(path.join(web, 'app/icon.svg'), 'utf8');

/** A system may cut a maskable icon to a circle over the middle 80 %: the drawing is set in, its ground runs out. */
const icons = [
  { file: 'icon-192.png', sizePx: 192, drawnShare: 1, isCut: false },
  { file: 'icon-512.png', sizePx: 512, drawnShare: 1, isCut: false },
  { file: 'icon-maskable-512.png', sizePx: 512, drawnShare: 0.72, isCut: true },
  { file: 'apple-touch-icon.png', sizePx: 180, drawnShare: 0.86, isCut: true },
] as const;

const browser = await launchChromium();
try {
  fs.mkdirSync(folder, { recursive: true });
  for (const { file, sizePx, drawnShare, isCut } of icons) {
    const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
    const drawn = Math.round(sizePx * drawnShare);
    await page.setContent(
      `<body style="margin:0;display:grid;place-items:center;height:${sizePx}px;background:${isCut ? ground : 'transparent'}">
       <div style="width:${drawn}px;height:${drawn}px">${svg}</div></body>`,
    );
    await page.screenshot({ path: path.join(folder, file), omitBackground: !isCut });
    await page.close();
  }
} finally {
  await browser.close();
}
