// npm run check: what every change must pass before it is committed.
import { build } from './steps/build.mjs';
import { checkNode } from './steps/check-node.mjs';
import { checks } from './steps/checks.mjs';
import { install } from './steps/install.mjs';
import { Tally } from './steps/tally.mjs';

checkNode();
await install();
await build();
const tally = new Tally();
await checks(tally);
tally.finish();
