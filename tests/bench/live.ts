// npm run bench:live [-- quick]: how soon a second device shows a change. Writes docs/bench/live.md (not when quick).
import fs from 'node:fs';
import os from 'node:os';
import { launchChromium } from '../browser/chromium.js';
import { startProduct } from '../browser/product.js';
import { timeChanges } from '../browser/time-changes.js';

const isQuick = process.argv.includes('quick');
const COUNT = isQuick ? 3 : 20;
const LIMIT_MS = 1000;

const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const medianOf = (times: readonly number[]): number => sorted(times)[Math.floor(times.length / 2)] ?? NaN;
const row = (what: string, times: readonly number[]): string => {
  const over = times.filter((one) => one > LIMIT_MS).length;
  return `| ${what} | ${medianOf(times)} | ${Math.max(...times)} | ${over} of ${times.length} |`;
};

const product = await startProduct('demo');
const browser = await launchChromium();
try {
  const { pullsMs, movesMs } = await timeChanges(browser, product.origin, { plate: 'LIV 200', count: COUNT });
  const text = [
    '# A change on another device',
    '',
    `Made by \`npm run bench:live\` on Node ${process.versions.node}, ${os.availableParallelism()} cores, load ${os.loadavg()[0]?.toFixed(1)} while it ran: server and both browsers share them, so read times as upper bounds. One device records ${COUNT} pulls and moves the car ${COUNT} times on the board, each as soon as the other device has shown the one before; both read the same clock.`,
    '',
    `| from the press on one device to the frame of the other | median, ms | longest, ms | over ${LIMIT_MS} ms |`,
    '| --- | ---: | ---: | ---: |',
    row('a pull is recorded on the visit', pullsMs),
    row('a car is moved on the board', movesMs),
    '',
  ].join('\n');
  console.log(text);
  if (!isQuick) fs.writeFileSync(new URL('../../docs/bench/live.md', import.meta.url), text);
  process.exitCode = Math.max(medianOf(pullsMs), medianOf(movesMs)) > LIMIT_MS ? 1 : 0;
} finally {
  await browser.close();
  await product.stop();
}
