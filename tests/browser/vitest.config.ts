import { defineConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.js';

const conditions = ['pullbook-source', 'node'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: ['pullbook-source'] } },
  test: {
    include: ['tests/browser/**/*.test.ts'],
    root: new URL('../..', import.meta.url).pathname,
    globalSetup: 'tests/browser/shared-product.ts',
    // A test in a browser waits more than it works: two files side by side, each with a demo workshop of its own.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    // Tests of one file that may run side by side: as many as there are cores in the smallest machine.
    maxConcurrency: 2,
    testTimeout: 400_000,
    hookTimeout: 120_000,
  },
});
