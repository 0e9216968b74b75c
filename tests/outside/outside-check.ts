import { expect, test } from 'vitest';

/** Where the figure of an outside check comes from. */
export type CheckOrigin =
  'published' | 'certified' | 'worked example' | 'exact' | 'reference library' | 'recomputed' | 'from memory';

/** One figure of ours, held against one from outside. */
export interface OutsideCheck {
  /** Folder of the package, then a short name: `air/standard-atmosphere`. */
  readonly id: string;
  /** What is checked, in the field's words. */
  readonly checks: string;
  /** Standard, book, paper, data set or library, with the place in it. */
  readonly source: string;
  readonly origin: CheckOrigin;
}

declare module 'vitest' {
  interface TaskMeta {
    outsideCheck?: OutsideCheck;
  }
}

/** Declares a check against an outside source: a test that the list of checks finds by itself. */
export function outsideCheck(check: OutsideCheck, body: () => void): void {
  test(`${check.id}: ${check.checks}`, ({ task }) => {
    task.meta.outsideCheck = check;
    expect.hasAssertions();
    body();
  });
}
