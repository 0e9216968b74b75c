// npm run bench:budget: weighs the scripts of the pages that have a budget, after a build, into docs/bench/budget.md.
import fs from 'node:fs';
import path from 'node:path';
import { launchChromium } from '../browser/chromium.js';
import { startProduct } from '../browser/product.js';
import { weighScripts } from '../browser/weigh-scripts.js';

const file = path.resolve(import.meta.dirname, '../../docs/bench/budget.md');
const kilo = (bytes: number): string => (bytes / 1000).toFixed(1);

const product = await startProduct('demo');
const browser = await launchChromium();
try {
  const weights = await weighScripts(browser, product.origin);
  const rows = weights.map(
    ({ page, gzipBytes, budgetBytes, scriptCount }) =>
      `| ${page} | ${kilo(gzipBytes)} | ${kilo(budgetBytes)} | ${scriptCount} |`,
  );
  const text = `# What a page loads

Written by \`npm run bench:budget\`; the browser tests hold the budgets. Each page is opened in Chromium as on a device
that has never seen it, and every script that comes in until the page stands still is counted, after gzip. Forms and
dialogs bring their own scripts when they are opened.

| page | scripts, kB gzip | budget, kB | files |
| --- | ---: | ---: | ---: |
${rows.join('\n')}
`;
  fs.writeFileSync(file, text);
  console.log(rows.join('\n'));
  process.exitCode = weights.every((one) => one.gzipBytes <= one.budgetBytes) ? 0 : 1;
} finally {
  await browser.close();
  await product.stop();
}
