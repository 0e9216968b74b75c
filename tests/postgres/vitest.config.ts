import { defineConfig } from 'vitest/config';

const conditions = ['pullbook-source', 'node'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: ['pullbook-source'] } },
  test: {
    include: ['tests/postgres/**/*.test.ts'],
    root: new URL('../..', import.meta.url).pathname,
    fileParallelism: false,
    // Against hanging only: a busy machine is slow, and no test measures time.
    testTimeout: 120_000,
    hookTimeout: 180_000,
  },
});
