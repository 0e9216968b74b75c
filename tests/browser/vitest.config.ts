import { defineConfig } from 'vitest/config';

const conditions = ['pullbook-source', 'node'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: ['pullbook-source'] } },
  test: {
    include: ['tests/browser/**/*.test.ts'],
    root: new URL('../..', import.meta.url).pathname,
    globalSetup: 'tests/browser/shared-product.ts',
    fileParallelism: false,
    // Tests of one file that may run side by side: as many as there are cores in the smallest machine.
    maxConcurrency: 2,
    testTimeout: 400_000,
    hookTimeout: 120_000,
  },
});
