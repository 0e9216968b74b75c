import type { BrowserContext, Page } from 'playwright-core';

/** One screen of the dashboard in one state, and the way there on a device of the person who sees it. */
export interface Screen {
  readonly name: string;
  /** The page of the dashboard that it is a state of, as its address is written: `/visits/[id]`; null for the server's own. */
  readonly route: string | null;
  readonly who: Person;
  /** In which book: the demo's, unless a book that has just been opened is wanted. */
  readonly book?: 'new';
  /** Whether the device keeps the dashboard for when there is no network; else it is spared fetching all of it. */
  readonly keepsShell?: true;
  /** Brings the screen about; ends when what it is about stands there. */
  readonly open: (page: Page, context: BrowserContext) => Promise<unknown>;
  /** Whether `npm run docs:pictures` takes it in every size, by day and by night; else two pictures of it are enough. */
  readonly isPage?: boolean;
  /** Whether a tuner with gloves uses it in a moving car: targets of 48 px. */
  readonly isForGloves?: boolean;
  /** Brings it about again after the window has changed its size: what folds away then. */
  readonly afterResize?: (page: Page) => Promise<unknown>;
  /** What lies over the rest and is looked at alone: a menu that closes when the focus leaves it. */
  readonly within?: string;
}

export const people = {
  owner: 'owner@pullbook.example',
  tuner: 'tuner@pullbook.example',
  desk: 'desk@pullbook.example',
} as const;

/** Whose device it is; nobody's before signing in. */
export type Person = keyof typeof people | 'nobody';
