import { deskScreens } from './desk-screens.js';
import { gateHoldScreens } from './gate-hold-screens.js';
import { logScreens } from './log-screens.js';
import { newBookScreens } from './new-book-screens.js';
import { outboxScreens } from './outbox-screens.js';
import { pageScreens } from './page-screens.js';
import { practiceScreens } from './practice-screens.js';
import type { Screen } from './screen.js';
import { sheetScreens } from './sheet-screens.js';
import { tourScreens } from './tour-screens.js';
import { visitStartScreens } from './visit-start-screens.js';
import { visitScreens } from './visit-screens.js';

/**
 * Every screen that a person may meet, in the states that look unlike: the one list that the test over all screens and
 * `npm run docs:pictures` go through. A new page that is not in it fails the test.
 */
export const screens: readonly Screen[] = [
  // In this order, so that what later ones bring into the demo is not in the pictures of its own pages.
  ...pageScreens,
  ...tourScreens,
  ...newBookScreens,
  ...sheetScreens,
  ...practiceScreens,
  ...deskScreens,
  ...visitStartScreens,
  ...visitScreens,
  ...gateHoldScreens,
  ...logScreens,
  ...outboxScreens,
];
