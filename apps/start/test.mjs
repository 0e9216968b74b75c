// npm test: sets up and runs everything, PostgreSQL and a real browser included.
import { build } from './steps/build.mjs';
import { checkNode } from './steps/check-node.mjs';
import { checks } from './steps/checks.mjs';
import { ensureChromium } from './steps/ensure-chromium.mjs';
import { install } from './steps/install.mjs';
import { Tally } from './steps/tally.mjs';

checkNode();
// Fetched while the rest is set up.
const chromium = ensureChromium();
await install();
await build();
await chromium;
const tally = new Tally();
await checks(tally);
await tally.tests('PostgreSQL', ['--config', 'tests/postgres/vitest.config.ts']);
await tally.tests('real browser', ['--config', 'tests/browser/vitest.config.ts'], {
  env: { CHROMIUM_PATH: await chromium },
});
tally.finish();
